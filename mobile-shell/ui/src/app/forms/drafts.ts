// What somebody has begun to fill in and not yet handed over: it is there again after a reload, or when the system closed
// the app in the pocket. One home for the forms that keep drafts. Kept on the device, not on the bike.

const KEY = 'layshaft.draft.';

/** The draft of a form; nothing where there is none, or none that `fits`: another version may have kept another shape. */
export function draftOf<Draft>(form: string, fits: (kept: unknown) => kept is Draft): Draft | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY + form) ?? 'null');
    return fits(kept) ? kept : null;
  } catch {
    // Unreadable or shut off: the form begins anew.
    return null;
  }
}

export function keepDraft<Draft>(form: string, draft: Draft) {
  try {
    localStorage.setItem(KEY + form, JSON.stringify(draft));
  } catch {
    // Without room the draft holds until the page is closed.
  }
}

/** What was drafted is handed over. */
export function dropDraft(form: string) {
  try {
    localStorage.removeItem(KEY + form);
  } catch {
    // Shut off: then there is none.
  }
}
