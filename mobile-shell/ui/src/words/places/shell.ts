// The frame of the app: opening, fields, the number pad, photos.
export const shell = {
  app: { name: 'Layshaft' },

  places: { all: 'Places', today: 'Today', plan: 'Plan', numbers: 'Numbers', inspect: 'Inspect', bike: 'Bike' },

  boot: {
    opening: 'Opening the workshop…',
    notOpen: 'The data is not open yet.',
    elsewhereTitle: 'Open in another tab',
    elsewhere: 'Another tab or window holds the data and does not answer. Nothing is lost. Close the other one, then try again.',
    brokenTitle: 'The data could not be opened',
    broken: 'Nothing was deleted. If the device is short of room, make some and try again. A bundle that you saved can be taken in on any device.',
    again: 'Try again',
    setAsideTitle: 'A damaged file was set aside.',
    setAside: (name: string) => `The data could not be read, so it was put aside as “${name}” and not deleted. Start afresh, or take in your last bundle.`,
    asideBefore: (name: string) =>
      `At one point the data could not be read, so it was put aside as “${name}” and not deleted. It stays until the app is taken off this device.`,
    asideSave: 'Save the damaged file',
    asideSaved: (name: string) => `${name} is saved. Whoever knows SQLite may get facts out of it.`,
    noPage: 'There is nothing at this address.',
    noPageGo: 'Go to Today',
    update: 'A newer version is ready.',
    updateTake: 'Take it now',
    updateLater: 'Later',
    skip: 'Skip to the page',
  },

  parts: {
    back: 'Back',
    close: 'Close',
    save: 'Save',
    notKnown: 'not known',
    working: 'Working',
    holds: 'Where it holds.',
    sources: 'Sources',
    caution: 'Caution.',
    beforeAfter: (before: string, after: string) => `from ${before} to ${after}`,
    less: (what: string) => `${what}: one less`,
    more: (what: string) => `${what}: one more`,
    typeIt: (what: string, value: string) => `${what}: ${value}. Type a number`,
    showIn: (symbol: string) => `Show in ${symbol}`,
    yes: 'Yes',
    no: 'No',
  },

  findings: {
    hours: 'Set bench time',
    garage: 'Temperature in the garage',
  },

  when: {
    now: 'Just now',
    earlier: 'Earlier',
    moment: 'Day and time',
  },

  draft: {
    found: 'Not saved yet.',
    more: 'This is what you typed last time.',
    discard: 'Discard it',
  },

  pad: {
    range: (from: string, to: string, symbol: string) => `${from} to ${to}${symbol ? ` ${symbol}` : ''} is accepted`,
    empty: 'Type a number.',
    point: 'decimal point',
    erase: 'Erase the last digit',
    clear: 'Clear',
    sign: 'Plus or minus',
    to: 'type in',
    inOther: (symbol: string) => `Type in ${symbol}`,
    enter: 'Enter',
  },

  photos: {
    title: 'Photos',
    take: 'Photo',
    choose: 'Take or choose a photo',
    justTaken: 'the photo just taken',
    caption: 'What it shows',
    captionHint: 'rear wheel, spacer on the left',
    keep: 'Keep it',
    kept: 'The photo is kept.',
    one: 'Photo',
    open: (caption: string) => `Photo${caption ? `: ${caption}` : ''}`,
    putAway: 'Put it away',
    away: 'The photo is put away.',
    unreadable: (name: string) => `“${name}” is no picture that can be read here.`,
  },

  toast: { undo: 'Undo', undone: 'Taken back.' },
};
