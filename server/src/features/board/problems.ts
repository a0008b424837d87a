import type { UnmatchedAcceptance } from '../../board/kept/accepted';
import { cutShort } from '../../board/layer/cut-short';
import type { BoardLayer, LayerTrouble } from '../../board/layer/layer';
import { breakCheck, type StatedBreak, statedBreaks } from '../../board/layer/stated-breaks';
import { settingText } from '../../board/listing/setting-text';
import type { Catalog } from '../../catalog/catalog';
import type { Check } from '../../catalog/model/check';
import type { Finding } from '../../checks/report/finding';
import { sentenceOf } from '../../checks/report/render';
import type { Range } from '../range';
import type { BoardAction } from './action';
import { nearNames } from './near-names';

/** Something wrong with a board's text as such, where it stands in it. */
export interface BoardProblem {
  readonly check: Check;
  readonly values: Readonly<Record<string, string>>;
  readonly message: string;
  readonly advice: string;
  readonly range: Range;
  readonly fixes: readonly BoardAction[];
}

/** Beyond so many lines that could not be read, the rest is counted. */
const mostUnread = 20;

/** What a text and the profile themselves say about it, in its order. */
export function boardProblems(layer: BoardLayer, catalog: Catalog): readonly BoardProblem[] {
  const report = new ProblemList(catalog);
  if (layer.refused !== null) {
    report.add('board/too-much', { reason: layer.refused }, top);
    return report.problems;
  }
  if (layer.settings.length === 0 && isSomething(layer)) {
    report.add('board/no-settings', { reason: 'No line looks like a setting.' }, top);
    return report.problems;
  }
  if (layer.profile === null && layer.settings.length > 0) report.add('board/no-profile', {}, top);
  addKept(layer, report);
  addTroubles(layer, report);
  addBreaks(layer, report);
  addCutShort(layer, report);
  addUnread(layer, report);
  return [...report.problems].sort(
    ({ range: { start: one } }, { range: { start: other } }) =>
      one.line - other.line || one.character - other.character,
  );
}

/**
 * Findings of the script that a text comes to, as far as the text can answer for them: of a value that the board
 * itself can't read, the profile says what is wrong.
 */
export function isReportedByProfile({ check, place }: Finding, { lines }: BoardLayer): boolean {
  const trouble = lines[place.script.lineNumber(place.line)]?.trouble;
  return trouble?.id === 'board/value-unclear' && check.id.startsWith('line/');
}

const top: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

function isSomething({ texts }: BoardLayer): boolean {
  return texts.some((text) => text.trim() !== '');
}

class ProblemList {
  readonly problems: BoardProblem[] = [];

  constructor(private readonly catalog: Catalog) {}

  /** `near`: what may stand there instead. */
  add(
    id: string,
    values: Readonly<Record<string, string>>,
    range: Range,
    near: readonly string[] = [],
    others: readonly BoardAction[] = [],
  ): void {
    const check = this.catalog.check(id);
    if (check === undefined || this.catalog.isSilent(id)) return;
    const told = { ...values, meant: near[0] ?? '' };
    this.problems.push({
      check,
      values: told,
      message: sentenceOf(check.message, told),
      advice: sentenceOf(check.advice, told),
      range,
      fixes: [
        ...near.map((text) => ({
          title: `Write ${text}`,
          edits: [{ range, newText: text }],
          beside: null,
        })),
        ...others,
      ],
    });
  }
}

/** What of what is kept beside the text does not count. */
function addKept({ kept: { fault }, unmatched }: BoardLayer, report: ProblemList): void {
  if (fault !== null) report.add('board/beside-unreadable', { reason: fault }, top);
  for (const { accepted, why } of unmatched) {
    const { setting, check } = accepted;
    const values = { check, name: settingText(setting), why: whyUnmatched[why] };
    const beside = { withdraw: accepted, accept: null };
    report.add(
      'board/acceptance-unmatched',
      values,
      top,
      [],
      [{ title: 'Remove the acceptance', edits: [], beside }],
    );
  }
}

const whyUnmatched: Readonly<Record<UnmatchedAcceptance['why'], string>> = {
  'no-setting': 'which is not in it',
  'accepts-already': 'which accepts another risk already',
  'no-reason': 'and no reason is given',
};

function addTroubles(layer: BoardLayer, report: ProblemList): void {
  for (const [index, { trouble }] of layer.lines.entries()) {
    const setting = layer.settings[index];
    if (trouble === null || setting === undefined) continue;
    const near = trouble.id === 'board/unknown-setting' ? nearNames(layer, setting) : [];
    report.add(idOf(trouble, near), trouble.values, setting.at[trouble.in], near);
  }
}

/** A name that is near to none may be new on the board: that is worth knowing, and no slip. */
function idOf({ id }: LayerTrouble, near: readonly string[]): string {
  return id === 'board/unknown-setting' && near.length === 0 ? 'board/unlisted-setting' : id;
}

function addBreaks(layer: BoardLayer, report: ProblemList): void {
  const { broken, doubted } = statedBreaks(layer);
  for (const one of broken) addBreak(layer, one, report);
  const [first] = doubted;
  const setting = layer.settings[first?.index ?? -1];
  if (setting === undefined) return;
  const values = { name: setting.name, more: doubted.length === 1 ? '' : String(doubted.length - 1) };
  report.add('board/statement-doubted', values, setting.at.value);
}

function addBreak({ settings }: BoardLayer, one: StatedBreak, report: ProblemList): void {
  const setting = settings[one.index];
  if (setting === undefined) return;
  const { id, values } = breakCheck(one, setting.name, setting.value);
  report.add(id, values, setting.at.value, one.near);
}

function addCutShort(layer: BoardLayer, report: ProblemList): void {
  const cut = cutShort(layer);
  if (cut === null || layer.profile === null) return;
  const { beside, is, count, first } = cut;
  const values = { board: layer.profile.title, count: String(count), end: is, first };
  report.add('board/part-of-listing', values, beside.at.name);
}

function addUnread({ left }: BoardLayer, report: ProblemList): void {
  for (const { at, reason } of left.slice(0, mostUnread)) report.add('board/unreadable', { reason }, at);
  const [next, ...others] = left.slice(mostUnread);
  if (next === undefined) return;
  const reason =
    others.length === 0
      ? next.reason
      : `${next.reason} The same holds for ${others.length} more lines below.`;
  report.add('board/unreadable', { reason }, next.at);
}
