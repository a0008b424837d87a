import { mostTold } from './shown-findings';

/** What `propsoff --help` prints. */
export const helpText = `propsoff: checks the settings scripts of small multirotors before they reach a board

Usage: propsoff <command> [paths] [options]

  propsoff check [paths | -] [--json] [--pack <name>] [--strict] [--board <name>]
      Checks scripts: files, folders (every .craft and .boardtext below them) or - for standard input.
      Without a path: the current folder.
        --json          one JSON object instead of text
        --pack <name>   only findings that hold with this pack
        --strict        risks that nobody accepted count as well
        --board <name>  the paths are texts in this board's own form; files that end in .boardtext are anyway
      Of one script at most ${mostTold} findings are told, the worst; all are counted.

  propsoff format [paths | -] [--check]
      Lines values and comments up, in place; - writes to standard output.
        --check         changes nothing, tells which scripts would change

  propsoff explain <parameter | group | check>
      The whole story of a parameter (gyro.lowpass.cutoff) or of a check (wire/port-shared);
      of a group (gyro) its parameters; of a last word (cutoff) those that end in it.

  propsoff sheet <script> [--json] [--pack <name>]
      The build sheet of one script: what was found, who is wired where, figures for every pack.

  propsoff bench-card <script> [--pack <name>] [--html | --json]
      What is done on the bench to prove the craft, only the steps that it needs, as Markdown; --html: a
      page to print on A4 or A5. Exit code 1 while something must be mended first; the card says what.

  propsoff compare <script | -> <script | -> [--pack <name>]... [--json]
  propsoff compare <script> --pack <one> --pack <other> [--json]
      The settings that differ, in the order of the job, with what each difference does by itself to
      figures and findings; then what they come to. An earlier revision comes in by standard input:
      git show HEAD~3:my.craft | propsoff compare - my.craft

  propsoff board-text <script> [--board <profile>] [--pack <name>] [--changed] [--record] [--despite <reason>]
      The settings in the board's own text, to standard output; what was rounded or left out, to
      standard error. Must-fix findings hold it back.
        --board         a profile's name; without it the one that the script sets
        --changed       only what changed since the record beside the script
        --record        writes that record: <script>.handed.json
        --despite       goes on in spite of must-fix findings; the reason is written into the text

  propsoff read <capture | -> [--board <profile>]
      A craft script from text captured from a board, to standard output; the summary to standard error.

  propsoff prove <script> <capture | -> [--board <profile>] [--pack <name>] [--json] [--ignore-extra]
      Whether a capture shows all that the script says: exit code 0 only if all is equal.
        --ignore-extra  settings that the script does not make are told and count not

  propsoff learn <capture | -> [--name <name>] [--confirm <setting>=<parameter>]... [--json]
      A board profile from a listing of any form, to standard output; what its settings may stand for, to
      standard error. Only what is confirmed is named; the rest are settings of the board's own.
        --json          what was understood and the proposals, as JSON

  propsoff server --stdio
      The language server, for editors that start one by a command; README.md shows two.

  What the files in the folder "propsoff" of the current folder add (settings, words, rules, links,
  chemistries, regions) and the board profiles in the folder "boards" are known everywhere; what is
  wrong with one of them is told by check.

  propsoff --version, propsoff --help

Exit code 0: nothing to fix. 1: something to fix. 2: could not run; one line says why.
Checks see the script, not the craft. Propellers off at the bench; local rules decide.
`;
