import { strict as assert } from 'node:assert';
import * as vscode from 'vscode';
import { projectText } from './project-text';
import { checkOf } from './scripts';
import { until } from './until';

const levels = ['must-fix', 'risk', 'note', 'tidy'];

/** A dozen of the faulty scripts, from every part of the job. */
const names = [
  'name-typo',
  'unit-wrong-dimension',
  'decimal-comma',
  'curly-quotes',
  'outside-usual',
  'choice-unknown',
  'two-devices-on-a-port',
  'receiver-on-wrong-supply',
  'spin-on-board-only',
  'arms-at-any-tilt',
  'landing-above-warning',
  'overlay-off-grid',
  'video-power-above-limit',
];

interface Expected {
  readonly id: string;
  readonly level: string;
  readonly range: { readonly start: vscode.Position; readonly end: vscode.Position };
}

function lineOf(id: string, level: string, { start, end }: Expected['range']): string {
  return `${start.line}:${start.character}-${end.line}:${end.character} ${level} ${id}`;
}

function shownFor(uri: vscode.Uri): readonly string[] {
  return vscode.languages
    .getDiagnostics(uri)
    .map((found) => lineOf(checkOf(found), levels[found.severity] ?? '', found.range));
}

describe('a faulty script in the editor', () => {
  for (const name of names) {
    it(`${name} is marked at its place`, async () => {
      const content = await projectText(`test/faults/${name}.craft`);
      const told = JSON.parse(await projectText(`test/faults/${name}.json`)) as { findings: Expected[] };
      const expected = told.findings.map(({ id, level, range }) => lineOf(id, level, range));
      const document = await vscode.workspace.openTextDocument({ language: 'craft-script', content });
      await vscode.window.showTextDocument(document);
      await until(`${name} is marked`, () => expected.every((line) => shownFor(document.uri).includes(line)));
      assert.ok(expected.every((line) => shownFor(document.uri).includes(line)));
    });
  }
});
