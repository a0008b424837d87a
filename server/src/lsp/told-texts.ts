import type { Finding } from '../checks/finding';
import { adviceOf, messageOf } from '../checks/render';

/**
 * What findings say, by what they are about: an edit leaves nearly all sentences as they were. Two generations,
 * so that it stays bounded without keeping count of use.
 */
export class ToldTexts {
  private young = new Map<string, string>();
  private old = new Map<string, string>();

  constructor(private readonly capacity = 2048) {}

  /** The sentence that says what is wrong; then, unless it is accepted, the one that says what to do. */
  textOf(finding: Finding): string {
    const key = keyOf(finding);
    const known = this.young.get(key) ?? this.old.get(key);
    if (known !== undefined) return known;
    const { accepted } = finding;
    const message = messageOf(finding);
    const text =
      accepted === null ? `${message}\n${adviceOf(finding)}` : `Accepted (${accepted}): ${message}`;
    if (this.young.size >= this.capacity) {
      this.old = this.young;
      this.young = new Map();
    }
    this.young.set(key, text);
    return text;
  }
}

/** All that the sentences are made from, in one text in which no part runs into the next. */
function keyOf({ check, values, pack, accepted }: Finding): string {
  return JSON.stringify([check.id, check.message, check.advice, pack, accepted, values]);
}
