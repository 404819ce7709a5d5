import type { Section } from '../report';
import { appendixJudgements } from './appendix-judgements';
import { appendixLog } from './appendix-log';
import { appendixMethods } from './appendix-methods';
import { appendixReadings } from './appendix-readings';
import { determinationSection } from './determination';
import { documentSection } from './document-data';
import { explanationsSection } from './explanations';
import { handlingSection } from './handling';
import { marksSection } from './marks';
import { mechanicsSection } from './mechanics';
import { notMeasuredSection } from './not-measured';
import { occurrenceSection } from './occurrence';
import { photosSection } from './photos';
import { safetySection } from './safety';
import { shapesSection } from './shapes';
import { signaturesSection } from './signatures';
import { statementsSection } from './statements';
import { summarySection } from './summary';
import { titleSection } from './title';
import { trackSection } from './track';
import { trainSection } from './train';
import { turnoutSection } from './turnout';
import { wheelsSection } from './wheels';

/** Every section in order; adding one is a file and its line here. The contents follow the title page. */
export const SECTIONS: readonly Section[] = [
  titleSection,
  safetySection,
  summarySection,
  occurrenceSection,
  trainSection,
  marksSection,
  trackSection,
  wheelsSection,
  shapesSection,
  turnoutSection,
  handlingSection,
  mechanicsSection,
  explanationsSection,
  notMeasuredSection,
  determinationSection,
  statementsSection,
  photosSection,
  appendixReadings,
  appendixMethods,
  appendixJudgements,
  appendixLog,
  signaturesSection,
  documentSection,
];
