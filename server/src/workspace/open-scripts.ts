import type { Craft } from '../craft/craft';
import type { CraftKey } from '../craft/keys';
import type { Script } from '../craft/script';
import { canonicalUri } from './canonical-uri';

/** A script that is open in an editor, or checked on the command line. */
export interface OpenScript {
  /** As the client spells it. */
  readonly uri: string;
  readonly script: Script;
  readonly craft: Craft;
  /** The client's number for the text as it stands. */
  readonly version: number;
}

/** The open scripts by their canonical URI, which is their key, each with a stamp that changes with its craft. */
export class OpenScripts {
  private readonly scripts = new Map<string, OpenScript>();
  /** The keys by what the client calls them: each message names one. */
  private readonly keys = new Map<string, string>();
  private readonly stamps = new Map<string, object>();

  /** `onAffected`: told the URIs of those whose findings may have changed through something other than their own edit. */
  constructor(private readonly onAffected: (uris: readonly string[]) => void = () => {}) {}

  keyOf(uri: string): string {
    return this.keys.get(uri) ?? canonicalUri(uri);
  }

  has(key: string): boolean {
    return this.scripts.has(key);
  }

  get(key: string): OpenScript | undefined {
    return this.scripts.get(key);
  }

  all(): readonly OpenScript[] {
    return [...this.scripts.values()];
  }

  entries(): readonly (readonly [key: string, open: OpenScript])[] {
    return [...this.scripts];
  }

  /** In place of what was open there. */
  put(key: string, open: OpenScript): void {
    this.keys.delete(this.scripts.get(key)?.uri ?? open.uri);
    this.keys.set(open.uri, key);
    this.scripts.set(key, open);
    this.touch(key);
  }

  remove(key: string): OpenScript | undefined {
    const open = this.scripts.get(key);
    if (open === undefined) return undefined;
    this.scripts.delete(key);
    this.keys.delete(open.uri);
    this.stamps.delete(key);
    return open;
  }

  /** A new object after each change to the script or to anything that it includes. */
  stamp(key: string): object | undefined {
    return this.stamps.get(key);
  }

  touch(key: string): void {
    this.stamps.set(key, {});
  }

  /** Tells every craft, and those who look at one that it concerns. */
  changed(inputs: readonly CraftKey[], except?: string): void {
    const concerned: string[] = [];
    for (const [key, { craft }] of this.scripts) {
      if (!craft.changed(inputs)) continue;
      this.touch(key);
      if (key !== except) concerned.push(key);
    }
    this.affect(concerned);
  }

  /** All may be otherwise now, whatever their crafts have read. */
  changedAll(inputs: readonly CraftKey[]): void {
    for (const [key, { craft }] of this.scripts) {
      craft.changed(inputs);
      this.touch(key);
    }
    this.affect([...this.scripts.keys()]);
  }

  affect(keys: readonly string[]): void {
    if (keys.length > 0) this.onAffected(keys.flatMap((key) => this.scripts.get(key)?.uri ?? []));
  }
}
