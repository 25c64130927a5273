#!/usr/bin/env node
require('../dist/launch.cjs').loadBundle('./cli.cjs').furrow(process.argv.slice(2));
