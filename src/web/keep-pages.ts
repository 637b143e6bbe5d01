let kept: ServiceWorkerRegistration | undefined;

/**
 * Where the browser allows it, everything that the application is made of lies on this device after the first visit. Where
 * that was cut off, it is begun again, and goes on with what is still missing.
 */
export function keepPages(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return; // plain HTTP has none
  if (kept?.active || kept?.waiting || kept?.installing) return; // one that broke off is none of them
  void navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).then(
    (registration) => {
      kept = registration;
      takeOverWhenLeft(registration);
    },
    () => {}, // once more when the bench is there again
  );
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
