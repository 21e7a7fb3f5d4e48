// What stands at the bottom of a page (its action, the halves at the bench) tells its height, so that the toast stands
// above it and never in the way of a thumb.

/** Height of the bar of places, which the toast already keeps clear of, in pixels. */
const BAR = 76;

export function reserve(overTheBar: boolean): (element: HTMLElement) => () => void {
  return (element) => {
    const root = document.documentElement;
    const measure = () => root.style.setProperty('--reserved', `${Math.max(0, element.offsetHeight - (overTheBar ? 0 : BAR))}px`);
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => {
      observer.disconnect();
      root.style.removeProperty('--reserved');
    };
  };
}

/** The toast tells its height, so that the last row of a page can be scrolled out from under it. */
export function makeRoom(toast: HTMLElement): () => void {
  const root = document.documentElement;
  const observer = new ResizeObserver(() => root.style.setProperty('--toast', `${toast.offsetHeight}px`));
  observer.observe(toast);
  return () => {
    observer.disconnect();
    root.style.removeProperty('--toast');
  };
}
