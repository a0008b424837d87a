/** Another one with each version of the page, so that an older one is let go. */
declare const PROPSOFF_PAGE: string;

/** Of what a service worker has, what is used here: its types are not those of a page. */
interface ServiceWorkerScope {
  addEventListener(kind: 'install' | 'activate', does: (event: Lasting) => void): void;
  addEventListener(kind: 'fetch', does: (event: Fetched) => void): void;
  skipWaiting(): Promise<void>;
}

interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}

interface Fetched {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const scope = globalThis as unknown as ServiceWorkerScope;

const files = ['propsoff.html', 'propsoff.webmanifest', 'icon.png'];

scope.addEventListener('install', (event) => {
  event.waitUntil(caches.open(PROPSOFF_PAGE).then((cache) => cache.addAll(files)));
  void scope.skipWaiting();
});

scope.addEventListener('activate', (event) => {
  const others = caches
    .keys()
    .then((names) => names.filter((name) => name.startsWith('propsoff-') && name !== PROPSOFF_PAGE));
  event.waitUntil(others.then((names) => Promise.all(names.map((name) => caches.delete(name)))));
});

/** What is kept is given at once; with a network a newer page replaces this worker, and counts at the next visit. */
scope.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  event.respondWith(
    caches.match(event.request, { ignoreSearch: true }).then((kept) => kept ?? fetch(event.request)),
  );
});
