// How many cans an area takes, as the picture and the answer say it.
import { t } from '../../words/index.ts';

export const cansInWords = (least: number, most: number): string =>
  least === most ? t('mixing-cans', { cans: most }) : t('mixing-cans-range', { least, most });
