/** Hands bytes to the browser to save under a name. */
export function download(name: string, bytes: Uint8Array | string): void {
  const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type: 'application/octet-stream' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser has taken hold of it by then.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
