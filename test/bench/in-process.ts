import { join } from 'node:path';
import type { Workspace } from '../../server/src/workspace/workspace';
import { demoFiles } from './demo-files';
import type { Bench } from './group';
import { against, elapsed, interleaved, type Measure } from './measure';
import { type EditedText, equalWork } from './peers/documents';
import { jsonServiceModule } from './peers/json-service';
import { equalSchema } from './peers/schema';

const uri = 'file:///demo/work.craft';
const goal = 1 / 20;

/** From one more or one less character in the middle of a text to the findings of the whole. */
export async function inProcessMeasures(bench: Bench): Promise<readonly Measure[]> {
  const { root, runs } = bench;
  const { craft, json } = equalWork(10_000, root);
  const [ours, peer] = await interleaved(runs(80, 10), [
    oursEdited(await opened(bench, craft), craft),
    await jsonValidated(bench, json),
  ]);
  if (ours === undefined || peer === undefined) throw new Error('nothing was measured');
  const name = 'edit to new findings in process, 10,000 settings';
  return [against(name, ours, "JSON service's parse and validate", peer, goal)];
}

async function opened({ engine, catalog, root }: Bench, { text }: EditedText): Promise<Workspace> {
  const fileSystem = demoFiles(join(root, 'test/demo'));
  const workspace = new engine.Workspace({ catalog, fileSystem });
  workspace.openScript(uri, text, 0);
  await workspace.settled();
  return workspace;
}

/** Takes a number out of its range in every other run and brings it back; the findings must follow. */
function oursEdited(workspace: Workspace, { place }: EditedText): (run: number) => Promise<number> {
  const before = workspace.findings(uri).length;
  return async (run) => {
    const isPutIn = run % 2 === 0;
    const end = { ...place, character: place.character + (isPutIn ? 0 : 1) };
    let found = 0;
    const ms = await elapsed(() => {
      workspace.change(uri, [{ start: place, end, text: isPutIn ? '9' : '' }], run + 1);
      found = workspace.findings(uri).length;
    });
    if (found !== before + (isPutIn ? 1 : 0)) throw new Error(`${found} findings after ${before}`);
    return ms;
  };
}

/** The same with the newest general-purpose service; its text document is made anew, untimed. */
async function jsonValidated(
  { catalog }: Bench,
  { text, place }: EditedText,
): Promise<(run: number) => Promise<number>> {
  const { getLanguageService, TextDocument } = jsonServiceModule();
  const service = getLanguageService({});
  const schema = equalSchema(catalog, ['single', 'pair']);
  service.configure({ validate: true, schemas: [{ uri: 'bench://schema', fileMatch: ['*.json'], schema }] });
  const lines = text.split('\n');
  const line = lines[place.line] ?? '';
  lines[place.line] = `${line.slice(0, place.character)}9${line.slice(place.character)}`;
  const texts = [lines.join('\n'), text];
  const validate = async (version: number) => {
    const document = TextDocument.create('file:///demo/work.json', 'json', version, texts[version % 2] ?? '');
    let found = 0;
    const ms = await elapsed(async () => {
      found = (await service.doValidation(document, service.parseJSONDocument(document))).length;
    });
    return { found, ms };
  };
  const before = (await validate(1)).found;
  return async (run) => {
    const { found, ms } = await validate(run);
    if (found !== before + (run % 2 === 0 ? 1 : 0)) throw new Error(`${found} findings after ${before}`);
    return ms;
  };
}
