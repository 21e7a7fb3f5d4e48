// Today.
import { plural } from '../shared/plural.ts';

export const today = {
  today: {
    title: 'Today',
    ready: 'Ready',
    notYet: 'not known',
    jobs: 'Jobs done',
    jobsOf: (done: number, all: number) => `${done} of ${all}`,
    atHand: 'Time at hand',
    spans: { 15: '15 min', 60: '1 hour', 180: 'Evening', 480: 'All day' } as Record<number, string>,
    fits: (span: string) => `Fits ${span}`,
    fitsSpan: { 15: '15 minutes', 60: 'the hour', 180: 'the evening', 480: 'the day' } as Record<number, string>,
    noneFits: (span: string) => `Nothing fits ${span}.`,
    longer: 'Needs longer',
    wholePlan: 'All jobs',
    start: 'Start at the bench',
    startThis: (title: string) => `Start at the bench: ${title}`,
    curing: 'Curing',
    stoppers: 'Stoppers',
    parcels: 'On their way',
    expected: (day: string) => `expected ${day}`,
    late: (day: string) => `was expected ${day}`,
    inspection: 'Inspection today',
    nothing: 'Nothing can be done at the bench right now: everything left waits for a cure, a parcel or another job.',
    empty: 'No job is written down yet. With jobs in the plan this page says what to do next and when the bike will be ready.',
    emptyAdd: 'Add the first job',
    allDone: 'Every job is done.',
    walk: 'Walk through the inspection',
    exportOld: (changes: number) => `${plural(changes, 'change', 'changes')} since the last bundle. The only copy is on this device.`,
    exportNow: 'Save a bundle',
  },

  processCard: {
    coats: (done: number, all: number) => `${done} of ${plural(all, 'coat', 'coats')}`,
  },

  cureCard: {
    full: 'full cure',
    cured: 'fully cured',
    leftHere: (span: string) => `${span} left`,
    standsStill: 'stands still: too cold',
    until: 'Until then:',
  },
};
