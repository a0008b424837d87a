/** What must never leave a line or turn its text around. */
export const forbidden = /[\p{Cc}\p{Zl}\p{Zp}\u200B-\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/u;
