/** Where the browser allows it, everything that the application is made of lies on this device after the first visit. */
export function keepPages(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return; // plain HTTP has none
  void navigator.serviceWorker
    .register('/sw.js', { updateViaCache: 'none' })
    .then(takeOverWhenLeft, () => {});
}

/** A newer version takes over between two visits, never under somebody's hands; what the older one needs stays till then. */
function takeOverWhenLeft(registration: ServiceWorkerRegistration): void {
  const takeOver = () => registration.waiting?.postMessage('take over');
  window.addEventListener('pagehide', takeOver);
  if (!registration.waiting) return;
  let isTouched = false;
  const touch = () => {
    isTouched = true;
  };
  for (const kind of ['pointerdown', 'keydown'])
    window.addEventListener(kind, touch, { once: true, capture: true });
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (!isTouched) location.reload(); // nothing has been begun on this page
  });
  takeOver();
}
