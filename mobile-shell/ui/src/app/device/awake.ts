// Keeps the screen on while somebody works with both hands. The lock falls when the app goes out of view and is asked
// for again when it comes back.

export function keepAwake(onchange: (awake: boolean) => void): () => void {
  let lock: WakeLockSentinel | null = null;
  let wanted = true;

  async function take() {
    if (!wanted || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
      lock.addEventListener('release', () => onchange(false));
      onchange(true);
      if (!wanted) await lock.release();
    } catch {
      onchange(false);
    }
  }

  const again = () => void take();
  document.addEventListener('visibilitychange', again);
  again();
  return () => {
    wanted = false;
    document.removeEventListener('visibilitychange', again);
    void lock?.release();
  };
}
