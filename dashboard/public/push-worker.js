/* Runs in the browser without a page: shows what the hub pushes. It keeps nothing and fetches nothing. */
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('push', (event) => {
  let said = {};
  try {
    said = event.data?.json() ?? {};
  } catch {
    // Something else than the hub's words: still say that there was something.
  }
  const title = typeof said.title === 'string' ? said.title : 'Soakwatch: look at the wall';
  const options = {
    body: typeof said.body === 'string' ? said.body : '',
    tag: typeof said.tag === 'string' ? said.tag : 'soakwatch',
    timestamp: typeof said.at === 'number' ? said.at : undefined,
    icon: '/icon.svg',
    requireInteraction: true,
  };
  event.waitUntil(self.registration.showNotification(title, options));
});

self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  event.waitUntil(self.clients.openWindow('/'));
});
