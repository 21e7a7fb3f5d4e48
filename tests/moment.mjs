// When and where the tests of the pages and of the window take place, whatever the machine's own clock says.

/** A Saturday morning in the life of the demo bike: 10 January 2026, ten o'clock there. */
export const START_MS = Date.UTC(2026, 0, 10, 9, 0, 0);

/** Its zone, one hour ahead of UTC in winter and two in summer. */
export const ZONE = 'Europe/Berlin';
