import { type CommandHelp, commonOptions, type Options } from '../command';

/** What a shell completes as the first word. */
function firstWords(commands: readonly CommandHelp[]): readonly (readonly [word: string, about: string])[] {
  return [
    ...commands.map(({ name, summary }) => [name, summary] as const),
    ['help', 'what a command does and takes'],
  ];
}

function optionsOf({ options }: CommandHelp): Options {
  return { ...options, ...commonOptions, help: { type: 'boolean', about: 'what it does and takes' } };
}

/** For bash, which shows words alone. */
export function bashCompletions(commands: readonly CommandHelp[]): string {
  const words = firstWords(commands).map(([word]) => word);
  const values = commands.flatMap((one) =>
    Object.entries(optionsOf(one)).flatMap(([name, { words: taken }]) =>
      taken === undefined ? [] : [`    '${one.name} --${name}') choices='${taken.join(' ')}' ;;`],
    ),
  );
  const options = commands.map((one) => {
    const names = Object.keys(optionsOf(one)).map((name) => `--${name}`);
    return `      ${one.name}) choices='${names.join(' ')}' ;;`;
  });
  return `_propsoff() {
  local word=\${COMP_WORDS[COMP_CWORD]} command=\${COMP_WORDS[1]} choices=''
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W '${[...words, '--help', '--version'].join(' ')}' -- "$word"))
    return
  fi
  case "$command \${COMP_WORDS[COMP_CWORD-1]}" in
${values.join('\n')}
    'help '*) choices='${words.join(' ')}' ;;
  esac
  if [ -z "$choices" ] && [ "\${word#-}" != "$word" ]; then
    case "$command" in
${options.join('\n')}
    esac
  fi
  if [ -n "$choices" ]; then
    COMPREPLY=($(compgen -W "$choices" -- "$word"))
  else
    COMPREPLY=($(compgen -f -- "$word"))
  fi
}
complete -o filenames -F _propsoff propsoff
`;
}

/** For fish. */
export function fishCompletions(commands: readonly CommandHelp[]): string {
  const first = firstWords(commands).map(
    ([word, about]) => `complete -c propsoff -n __fish_use_subcommand -f -a ${word} -d ${fishText(about)}`,
  );
  const options = commands.flatMap((one) =>
    Object.entries(optionsOf(one)).map(([name, { type, words, about }]) => {
      const taken =
        words === undefined ? (type === 'string' ? ' -r' : '') : ` -x -a ${fishText(words.join(' '))}`;
      return `complete -c propsoff -n '__fish_seen_subcommand_from ${one.name}' -l ${name}${taken} -d ${fishText(about)}`;
    }),
  );
  return `${[...first, ...options].join('\n')}\n`;
}

function fishText(text: string): string {
  return `'${text.replace(/['\\]/g, (mark) => `\\${mark}`)}'`;
}

/** For zsh. */
export function zshCompletions(commands: readonly CommandHelp[]): string {
  const first = firstWords(commands).map(
    ([word, about]) => `    ${zshText(`${word}:${about.replaceAll(':', '\\:')}`)}`,
  );
  const cases = commands.map((one) => {
    const options = Object.entries(optionsOf(one)).map(
      ([name, { type, words, value = 'value', multiple, about }]) => {
        const what = about.replace(/[[\]:\\]/g, (mark) => `\\${mark}`);
        const taken =
          type === 'boolean' ? '' : `:${value}:${words === undefined ? '_files' : `(${words.join(' ')})`}`;
        return zshText(`${multiple === true ? '*' : ''}--${name}[${what}]${taken}`);
      },
    );
    return `    ${one.name})\n      _arguments ${[...options, "'*:file:_files'"].join(' \\\n        ')}\n      ;;`;
  });
  return `#compdef propsoff
_propsoff() {
  local -a commands=(
${first.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  shift words
  (( CURRENT-- ))
  case $words[1] in
    help) _describe command commands ;;
${cases.join('\n')}
  esac
}
compdef _propsoff propsoff
`;
}

function zshText(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
