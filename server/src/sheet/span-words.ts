/** "22.6–29.1" as people say it: "22.6 to 29.1". */
export function spanWords(span: string): string {
  return span.replace('–', ' to ');
}
