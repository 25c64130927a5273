// What is installed with furrow: package-lock.json, and the list of it that npm run sbom gives.
import { readFileSync } from 'node:fs';
import { execa } from 'execa';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { ROOT } from './markdown.js';

const lockedSchema = z.object({
  version: z.string(),
  resolved: z.string().optional(),
  integrity: z.string().regex(/^sha512-[\w+/]{86}==$/),
  license: z.string(),
  dev: z.boolean().optional(),
  hasInstallScript: z.boolean().optional(),
});

const lockSchema = z.object({ packages: z.record(z.string(), z.unknown()) });

/** Of CycloneDX 1.5 what SECURITY.md promises; names as in its specification. */
const componentSchema = z.object({
  type: z.literal('library'),
  name: z.string(),
  version: z.string(),
  properties: z.array(z.object({ name: z.string(), value: z.string() })),
  purl: z.string().startsWith('pkg:npm/'),
  hashes: z.tuple([z.object({ alg: z.literal('SHA-512'), content: z.hex().length(128) })]),
  licenses: z
    .array(
      z.union([
        z.object({ license: z.object({ id: z.string() }) }),
        z.object({ expression: z.string() }),
      ]),
    )
    .min(1),
});

const billSchema = z.object({
  bomFormat: z.literal('CycloneDX'),
  specVersion: z.literal('1.5'),
  serialNumber: z.templateLiteral(['urn:uuid:', z.uuid()]),
  version: z.literal(1),
  metadata: z.object({
    component: z.object({
      type: z.literal('application'),
      purl: z.literal('pkg:npm/furrow@0.1.0'),
    }),
  }),
  components: z.array(componentSchema),
});

const LOCKED = Object.entries(
  lockSchema.parse(JSON.parse(readFileSync(`${ROOT}package-lock.json`, 'utf8'))).packages,
)
  .filter(([place]) => place !== '')
  .map(([place, entry]) => ({
    name: place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length),
    ...lockedSchema.parse(entry),
  }));
const AT_RUN_TIME = LOCKED.filter(({ dev }) => dev !== true);

describe('what is installed with furrow', () => {
  test('runs no script while it is installed', () => {
    const withScript = ({ hasInstallScript }: (typeof LOCKED)[number]) => hasInstallScript === true;
    expect(AT_RUN_TIME.filter(withScript)).toEqual([]);
    // The lock does say it of those that have one.
    expect(LOCKED.filter(withScript).length).toBeGreaterThan(0);
    expect(AT_RUN_TIME.length).toBeGreaterThan(10);
  });

  test('comes from a registry, by name and SHA-512, no package from a place of its own', () => {
    expect(LOCKED.filter(({ resolved }) => resolved !== undefined)).toEqual([]);
  });
});

/** Of packages that only who works on furrow installs. Left out by npm, others would be as well. */
const FOR_DEVELOPMENT = 'cdx:npm:package:development';

test('the bill of materials lists each package that is installed with furrow, and no other', async () => {
  const { stdout } = await execa('npm', ['run', '--silent', 'sbom'], { cwd: ROOT });
  const { components } = billSchema.parse(JSON.parse(stdout));
  const isInstalled = ({ properties }: (typeof components)[number]) =>
    properties.every(({ name }) => name !== FOR_DEVELOPMENT);
  const listed = components.filter(isInstalled).map(({ name, version, hashes: [{ content }] }) => ({
    name,
    version,
    integrity: `sha512-${Buffer.from(content, 'hex').toString('base64')}`,
  }));
  const installed = AT_RUN_TIME.map(({ name, version, integrity }) => ({
    name,
    version,
    integrity,
  }));
  expect(sorted(listed)).toEqual(sorted(installed));
});

function sorted<T extends { name: string; version: string }>(packages: readonly T[]): T[] {
  return packages.toSorted((one, other) =>
    `${one.name}@${one.version}` < `${other.name}@${other.version}` ? -1 : 1,
  );
}
