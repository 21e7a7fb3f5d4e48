// The texts of jobs, packs and tables in another language: a file of the site, which the program takes when it opens.

/** The file at an address; nothing where there is none: English is in the program. */
export async function contentAt(address: string): Promise<string | undefined> {
  try {
    const answer = await fetch(address);
    const isJson = answer.headers.get('content-type')?.includes('json') ?? false;
    return answer.ok && isJson ? await answer.text() : undefined;
  } catch {
    return undefined;
  }
}
