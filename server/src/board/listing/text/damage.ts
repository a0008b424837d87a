/** Characters that no board writes: a line that holds them was damaged on its way, or turns text around. */
const damage = /(?!\t)[\p{Cc}\p{Zl}\p{Zp}\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff\ufffd]/u;

export function isDamaged(text: string): boolean {
  return damage.test(text);
}
