import { mostTold } from './shown-findings';

/** What `propsoff --help` prints. */
export const helpText = `propsoff: checks the settings scripts of small multirotors before they reach a board

Usage: propsoff <command> [paths] [options]

  propsoff check [paths | -] [--json] [--pack <name>] [--strict]
      Checks scripts: files, folders (every .craft below them) or - for standard input.
      Without a path: the current folder.
        --json          one JSON object instead of text
        --pack <name>   only findings that hold with this pack
        --strict        risks that nobody accepted count as well
      Of one script at most ${mostTold} findings are told, the worst; all are counted.

  propsoff format [paths | -] [--check]
      Lines values and comments up, in place; - writes to standard output.
        --check         changes nothing, tells which scripts would change

  propsoff explain <parameter | group | check>
      The whole story of a parameter (gyro.lowpass.cutoff) or of a check (wire/port-shared);
      of a group (gyro) its parameters; of a last word (cutoff) those that end in it.

  propsoff sheet <script> --json [--pack <name>]
      The build sheet of one script as JSON.

  What the files in the folder "propsoff" of the current folder add (settings, words, rules, links,
  chemistries, regions) is known everywhere; what is wrong with one of them is told by check.

  propsoff --version, propsoff --help

Exit code 0: nothing to fix. 1: something to fix. 2: could not run; one line says why.
Checks see the script, not the craft. Propellers off at the bench; local rules decide.
`;
