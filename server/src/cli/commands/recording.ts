import { command, jsonOption, packOption } from '../command';
import { UsageError } from '../outcome';

/** `propsoff recording`: what a board's log says, by the pilot's questions. */
export const recordingCommand = command({
  name: 'recording',
  summary: 'what a board’s log says: what shakes, how it follows and how late, what the pack gives',
  usage: ['<file.csv> [options]'],
  about: [
    'Reads columns of text from any logger: commas, semicolons, tabs or blanks; any headings. What the columns hold is learnt from headings, units and numbers, and asked where nobody can know. What was left out stands first.',
    'A logger is confirmed once: --confirm keeps what its columns hold in recordings/<name>.json, and files with the same headings are known from then on.',
  ],
  options: {
    craft: {
      type: 'string',
      value: 'script',
      about: 'the script that was flown: filters and figures stand beside what was measured',
    },
    pack: packOption,
    flight: { type: 'string', value: 'number', about: 'which flight of the file; without it the longest' },
    compare: { type: 'string', value: 'file', about: 'an earlier recording: what has changed since' },
    column: {
      type: 'string',
      multiple: true,
      value: 'what',
      about: 'what a column holds: "m1 = motor.1 from 1000 to 2000"; said again for more',
    },
    rate: { type: 'string', value: 'Hz', about: 'rows a second, of a file without a time' },
    layout: {
      type: 'string',
      value: 'name',
      about: 'the layout to read it by, kept in recordings/ or a file',
    },
    confirm: {
      type: 'string',
      value: 'name',
      about: 'keeps what the columns hold as recordings/<name>.json',
    },
    columns: { type: 'boolean', about: 'only what the columns hold and what is to be said of them' },
    json: jsonOption('recording', 'one JSON object'),
  },
  examples: [
    ['propsoff recording flight.csv', 'what it says'],
    ['propsoff recording flight.csv --craft my.craft', 'beside the script that was flown'],
    ['propsoff recording flight.csv --columns', 'what its columns are taken for'],
    ['propsoff recording flight.csv --compare before.csv', 'what has changed since'],
  ],
  exit: {
    fine: 'it was read, and no risk was found',
    findings: 'a must-fix or a risk was found, or a question is open',
  },
  run: async ({ values, positionals }, terminal) => {
    const [path] = positionals;
    if (path === undefined || positionals.length > 1) throw new UsageError('recording takes one file');
    const { runRecording } = await import('../files/run-recording');
    return runRecording({ path, ...values }, terminal);
  },
});
