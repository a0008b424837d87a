import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import sarifSchema from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json';
import { propsoff } from '../support/command-line';
import { assertFits, validatorFor } from '../support/json-schema';
import { withScratch } from '../support/scratch';

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
}

interface Rule {
  readonly id: string;
  readonly helpUri?: string;
  readonly help?: { readonly text: string; readonly markdown: string };
}

interface Log {
  readonly version: string;
  readonly runs: readonly [
    {
      readonly tool: { readonly driver: { readonly rules: readonly Rule[] } };
      readonly invocations: readonly [
        {
          readonly executionSuccessful: boolean;
          readonly toolExecutionNotifications: readonly {
            readonly level: string;
            readonly message: { readonly text: string };
            readonly locations?: readonly {
              readonly physicalLocation: { readonly artifactLocation: object };
            }[];
          }[];
        },
      ];
      readonly artifacts: readonly { readonly location: { readonly uri: string } }[];
      readonly results: readonly {
        readonly ruleId: string;
        readonly ruleIndex: number;
        readonly level: string;
        readonly suppressions?: readonly { readonly justification: string }[];
        readonly fixes?: readonly object[];
        readonly locations: readonly [
          {
            readonly physicalLocation: {
              readonly artifactLocation: { readonly uri: string; readonly uriBaseId?: string };
              readonly region: Region;
            };
          },
        ];
      }[];
    },
  ];
}

const standard = validatorFor(sarifSchema);

/** The log, which must fit the schema of the standard. */
function logOf(stdout: string) {
  const log = JSON.parse(stdout) as Log;
  assertFits(standard, log);
  return log.runs[0];
}

const risky = '[gyro.filter.1]\nkind = butterworth\ncutoff = 3 kHz  # accept line/unusual: a wind tunnel\n';

describe('the log of SARIF 2.1.0', () => {
  it('fits the schema of the standard for every fault that we know of', () => {
    const { stdout, status } = propsoff(['check', '--sarif', 'test/faults', 'test/demo']);
    assert.equal(status, 1);
    const { results, tool, artifacts } = logOf(stdout);
    assert.ok(results.length > 100 && results.some(({ fixes }) => fixes !== undefined));
    for (const { ruleId, ruleIndex } of results) assert.equal(tool.driver.rules[ruleIndex]?.id, ruleId);
    assert.ok(artifacts.some(({ location }) => location.uri === 'test/demo/wagtail.craft'));
  });

  it('tells the whole story of every check that it names, and leads to no page on this machine', () => {
    const { tool } = logOf(propsoff(['check', '--sarif', 'test/faults', 'test/demo']).stdout);
    const { rules } = tool.driver;
    assert.ok(rules.length > 80);
    for (const { id, help, helpUri } of rules) {
      const story = help?.markdown ?? '';
      assert.ok(story.includes(`\`${id}\``) && /\*\*To do:\*\* \S/.test(story), id);
      assert.match(story, /^Source: \S/m, id);
      assert.ok(!/file:\/\/|command:/.test(story), id);
      assert.equal(helpUri, undefined, id);
    }
  });

  it('is refused by that schema where it is something else', () => {
    assert.notDeepEqual(standard({ version: '2.1.0', runs: [{ results: [] }] }), []);
    assert.notDeepEqual(standard({ version: '2.1.0', runs: [], more: 1 }), []);
  });

  it('counts lines and columns from 1, and spells paths as URIs below the current folder', () =>
    withScratch({ 'my fleet/é 1.craft': '[arming]\ntilt-limt = 60 deg\n' }, async ({ path }) => {
      const { stdout } = propsoff(['check', '--sarif'], { cwd: path });
      const [result] = logOf(stdout).results;
      assert.equal(result?.ruleId, 'line/unknown-name');
      assert.equal(result?.level, 'error');
      const { artifactLocation, region } = result.locations[0].physicalLocation;
      assert.deepEqual(artifactLocation, { uri: 'my%20fleet/%C3%A9%201.craft', uriBaseId: 'SRCROOT' });
      assert.deepEqual(region, { startLine: 2, startColumn: 1, endLine: 2, endColumn: 10 });
    }));

  it('keeps what was accepted, with the reason, as suppressed', () => {
    const plain = logOf(propsoff(['check', '--sarif', '-'], { input: risky.replace(/ {2}#.*/, '') }).stdout);
    const [first] = plain.results;
    assert.ok(first);
    const accepted = risky.replace('line/unusual', first.ruleId);
    const { results } = logOf(propsoff(['check', '--sarif', '-'], { input: accepted }).stdout);
    assert.deepEqual(results[0]?.suppressions, [{ kind: 'inSource', justification: 'a wind tunnel' }]);
  });

  it('names a file outside the current folder by where it is, and standard input by itself', () =>
    withScratch({ 'here/a.craft': '', 'there.craft': '[arming]\ntilt-limt = 1 deg\n' }, async (scratch) => {
      const cwd = scratch.file('here');
      const { stdout } = propsoff(['check', '--sarif', '../there.craft', '-'], { cwd, input: 'x\n' });
      const uris = logOf(stdout).artifacts.map(({ location }) => location.uri);
      assert.deepEqual(uris, [scratch.uriOf('there.craft'), 'standard-input']);
    }));

  it('says what is not known of a craft, in notes about its file', () => {
    const text = readFileSync('test/demo/wagtail.craft', 'utf8').replace(/^pitch .*\n/m, '');
    const habits = readFileSync('test/demo/club-habits.craft', 'utf8');
    return withScratch({ 'a.craft': text, 'club-habits.craft': habits }, async ({ path }) => {
      const { stdout } = propsoff(['check', '--sarif', 'a.craft'], { cwd: path });
      const { invocations, artifacts } = logOf(stdout);
      const notes = invocations[0].toolExecutionNotifications.filter(({ level }) => level === 'note');
      const [hover] = notes.filter(({ message }) => message.text.includes('prop.pitch'));
      assert.match(hover?.message.text ?? '', /^a\.craft: Hover, .*: not known yet\. Write prop\.pitch\.$/);
      assert.deepEqual(hover?.locations?.[0]?.physicalLocation.artifactLocation, artifacts[0]?.location);
      const told = propsoff(['check', 'a.craft'], { cwd: path }).stdout;
      for (const { message } of notes) assert.ok(told.includes(message.text.replace(/^a\.craft: /, '')));
    });
  });

  it('says what could not be read, and that findings were left out', () =>
    withScratch({ 'a.craft': `[gyro]\n${'wobble = 1\n'.repeat(1100)}` }, async ({ path }) => {
      const { stdout, status } = propsoff(['check', '--sarif', 'a.craft', 'nowhere.craft'], { cwd: path });
      assert.equal(status, 2);
      const { invocations, results } = logOf(stdout);
      assert.equal(invocations[0].executionSuccessful, false);
      const told = invocations[0].toolExecutionNotifications.map(({ message }) => message.text).join('\n');
      assert.match(told, /^nowhere\.craft: there is no such file/);
      assert.match(told, /^a\.craft has \d+ more findings/m);
      assert.equal(results.length, 1000);
    }));
});
