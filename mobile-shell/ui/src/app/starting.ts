// The steps in which a bike is started. The address says which one it is.
export const STEPS = ['who', 'kind', 'work', 'hours', 'inspection'] as const;
export type Step = (typeof STEPS)[number];

export const stepAt = (name: string | null): Step => STEPS.find((step) => step === name) ?? 'who';

/** Where one step is entered by itself, from Today. */
export const alone = (step: Step): string => `#/start/own?step=${step}&alone`;
