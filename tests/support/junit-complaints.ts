import { execa } from 'execa';

const SCHEMA = new URL('../report/junit.xsd', import.meta.url).pathname;

/** What xmllint says of a JUnit report; empty where it is XML and keeps to the schema. */
export async function complaintsOf(xml: string): Promise<string> {
  const { stderr, exitCode } = await execa('xmllint', ['--noout', '--schema', SCHEMA, '-'], {
    input: xml,
    reject: false,
  });
  return exitCode === 0 ? '' : stderr;
}
