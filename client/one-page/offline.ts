/** From a host, the page comes from the browser's own cache from the second visit on; from a disk it needs none. */
export function worksOffline(): void {
  if (!/^https?:$/.test(location.protocol) || !('serviceWorker' in navigator)) return;
  const link = document.createElement('link');
  link.rel = 'manifest';
  link.href = 'propsoff.webmanifest';
  document.head.append(link);
  // Without it the page works all the same, as long as there is a network.
  navigator.serviceWorker.register('service-worker.js').catch(() => undefined);
}
