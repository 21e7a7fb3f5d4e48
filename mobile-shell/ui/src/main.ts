// The first script, kept small: it opens the data and sees to the language, then loads the pages.
import './base.css';
import { opening } from './app/asking/early.ts';
import { takeLanguage } from './app/language.ts';

void Promise.all([opening, takeLanguage()]).then(() => import('./pages.ts'));
