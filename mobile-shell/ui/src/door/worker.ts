// The worker of one tab. The tab whose worker holds the lock owns the database and serves the others; when it goes, the
// next one in line takes over. See `tabs.ts` for who that is, `database.ts` for the program itself.
import type { Begin, Call, FromWorker } from './backend.ts';
import { asRefusal } from './database.ts';
import { Tabs } from './tabs.ts';

const page = self as unknown as {
  postMessage(message: FromWorker): void;
  onmessage: ((event: MessageEvent<Begin | Call>) => void) | null;
};

const tabs = new Tabs({
  state: (state) => page.postMessage({ say: 'state', state }),
  stale: (kinds) => page.postMessage({ say: 'stale', kinds }),
  answer: (answer) => page.postMessage({ say: 'answer', answer }),
  fault: () => page.postMessage({ say: 'fault' }),
});

function begin({ content }: Begin) {
  tabs.join(content).catch((thrown) => page.postMessage({ say: 'state', state: { kind: 'broken', refusal: asRefusal(thrown) } }));
}

page.onmessage = ({ data }) => (data.kind === 'begin' ? begin(data) : tabs.send(data));
