import { makeScript } from '../../../server/src/board/layer/make-script';
import { learnedProfile } from '../../../server/src/board/learn/learned-profile';
import { profileText } from '../../../server/src/board/learn/profile-text';
import { type Confirmed, nothingConfirmed } from '../../../server/src/board/learn/said';
import type { Listing } from '../../../server/src/board/listing/listing';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { settingKey } from '../../../server/src/board/listing/setting-key';
import { type Profile, profileOf } from '../../../server/src/board/profile/profile';
import { type Proof, prove } from '../../../server/src/board/proving/prove';
import { type Entries, entriesOf } from '../../../server/src/board/writing/entries';
import { handOverOf, type WrittenText, writeText } from '../../../server/src/board/writing/write-text';
import type { Catalog } from '../../../server/src/catalog/catalog';
import type { HandOver } from '../../../server/src/catalog/model/hand-over';
import { messageOf } from '../../../server/src/checks/report/render';
import { CraftView } from '../../../server/src/craft/view';
import { Workspace } from '../../../server/src/workspace/workspace';
import { workspaceWithBoard } from '../additions';
import { testCatalog } from '../catalog';
import { MemoryFiles } from '../memory-files';

/** A craft with what must be fixed in it, a sentence each. */
interface Checked {
  readonly view: CraftView;
  readonly mustFix: readonly string[];
}

/**
 * The way of a listing that nobody has seen: its profile is learned, without a question or with what was confirmed, and a script that
 * includes the listing, or is made of it, is checked, written and proved by that profile.
 */
export class Way {
  readonly captured: Listing;
  readonly faults: readonly string[];
  readonly profile: Profile;
  private readonly catalog: Catalog;
  private plain: Promise<Checked> | null = null;

  constructor(
    readonly text: string,
    confirmed: Confirmed = nothingConfirmed,
  ) {
    const learned = learnedProfile(readListing(text, null), 'dipper', confirmed, testCatalog);
    if (learned === null) throw new Error('no setting was found');
    const { catalog, problems } = workspaceWithBoard('boards/dipper.json', profileText(learned.profile));
    const board = catalog.board('dipper');
    const profile = board === undefined ? null : profileOf(board);
    this.faults = [...problems.values()].flat().map(({ message }) => `profile: ${message}`);
    if (profile === null) throw new Error(`the workspace does not take its profile: ${this.faults.join()}`);
    this.catalog = catalog;
    this.profile = profile;
    this.captured = readListing(text, profile.text.forms);
  }

  /** A script that includes the listing and says no more. */
  including(): Promise<Checked> {
    this.plain ??= this.includingWith('');
    return this.plain;
  }

  /** A script that includes the listing, with more lines below. */
  async includingWith(more: string): Promise<Checked> {
    return this.checked(`include "dipper.boardtext"\n${more}`);
  }

  /** A script that is made of the listing. */
  async made(): Promise<Checked> {
    return this.checked(makeScript(this.profile, this.catalog, this.text).text);
  }

  private async checked(script: string): Promise<Checked> {
    const fileSystem = new MemoryFiles({ 'dipper.boardtext': this.text });
    const workspace = new Workspace({
      catalog: this.catalog,
      fileSystem,
      onFault: (rule, error) => {
        throw new Error(`rule ${rule} failed`, { cause: error });
      },
    });
    const uri = 'test:///work/main.craft';
    const opened = workspace.openScript(uri, script, 1);
    await workspace.settled();
    const { craft } = workspace.get(uri) ?? opened;
    const mustFix = workspace.findings(uri).filter(({ level }) => level === 'must-fix');
    return { view: new CraftView(craft, craft.packs()[0] ?? null), mustFix: mustFix.map(messageOf) };
  }

  entries(view: CraftView): Entries {
    return entriesOf(this.profile, view);
  }

  written(entries: Entries, since: HandOver | null = null): WrittenText {
    return writeText({ profile: this.profile, entries, captured: this.captured, since, cautions: [] });
  }

  record(entries: Entries): HandOver {
    return handOverOf('dipper', null, entries, null);
  }

  proof(entries: Entries, capture: string): Proof {
    return prove({
      profile: this.profile,
      entries,
      captured: this.captured,
      capture: this.read(capture),
      except: new Set(),
      ignoresExtra: false,
    });
  }

  read(capture: string): Listing {
    return readListing(capture, this.profile.text.forms);
  }
}

/** What of a proof is not as it should be. */
export function unequal({ rows, left, cutOff, notCompared }: Proof): readonly string[] {
  return [
    ...rows
      .filter(({ verdict }) => verdict !== 'equal')
      .map((row) => `${row.verdict}: ${settingKey(row)} ${row.wanted} against ${row.held}`),
    ...left.map(({ number, reason }) => `line ${number + 1}: ${reason}`),
    ...notCompared.map(({ path }) => `not compared: ${path}`),
    ...(cutOff === null ? [] : [cutOff]),
  ];
}
