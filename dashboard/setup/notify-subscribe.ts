import { pushWords } from '../words/notify.ts';

/** Web Push of this browser (Push API): asked for only after a press, as browsers want it. */

/** Null: it can be tried. Else why not, in words. */
export function pushObstacle(world: { isSecureContext: boolean; hasPush: boolean }): string | null {
  // A page over plain HTTP has no service worker at all: say the reason, not the symptom.
  if (!world.isSecureContext) return pushWords.insecure;
  return world.hasPush ? null : pushWords.unsupported;
}

export function browserPush(): { isSecureContext: boolean; hasPush: boolean } {
  const hasPush = 'serviceWorker' in navigator && 'PushManager' in window && 'Notification' in window;
  return { isSecureContext: window.isSecureContext, hasPush };
}

/** base64url to bytes (RFC 4648 section 5). */
export function bytesOf(base64url: string): Uint8Array<ArrayBuffer> {
  const base64 = base64url.replaceAll('-', '+').replaceAll('_', '/');
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}

/** The subscription of this browser as the hub wants it. Rejects with words for the person. */
export async function subscribe(publicKey: string) {
  if ((await Notification.requestPermission()) !== 'granted') throw new Error(pushWords.refused);
  try {
    await navigator.serviceWorker.register('/push-worker.js');
    const registration = await navigator.serviceWorker.ready;
    // One of another key would be refused by the push service: this hub's key is the one that counts.
    await (await registration.pushManager.getSubscription())?.unsubscribe();
    const made = await registration.pushManager.subscribe({
      userVisibleOnly: true,
      applicationServerKey: bytesOf(publicKey),
    });
    const { endpoint = '', keys = {} } = made.toJSON();
    return { endpoint, keys: { p256dh: keys.p256dh ?? '', auth: keys.auth ?? '' } };
  } catch (fault) {
    throw new Error(pushWords.failed(fault instanceof Error ? fault.message : String(fault)));
  }
}
