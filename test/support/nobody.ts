/** Does something as a user without rights, where this process has the rights of all; the file system sees it so. */
export async function asNobody<T>(run: () => Promise<T>): Promise<T> {
  const { geteuid, seteuid } = process;
  if (geteuid?.() !== 0 || seteuid === undefined) return run();
  seteuid(65_534);
  try {
    return await run();
  } finally {
    seteuid(0);
  }
}
