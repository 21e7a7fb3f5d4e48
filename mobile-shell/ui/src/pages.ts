// Shows the app on the page that `index.html` gives it.
import { mount } from 'svelte';
import App from './App.svelte';
import { offerHandle } from './app/asking/handle.ts';
import { keepForOffline } from './app/device/offline.svelte.ts';
import { settings } from './app/settings.svelte.ts';

settings.showTheme();
const target = document.getElementById('app');
if (target) mount(App, { target });
offerHandle();
void keepForOffline();
