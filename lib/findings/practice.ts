import { ruleSetById } from '../rules';
import type { UnitSystem } from '../readings/unit';
import type { Context } from './context';

const EUROPEAN_SET = 'en13848-5';

/**
 * Where and over what things are measured: gauge 5/8 in below the top of rail and flanges 3/8 in above
 * the tread, or 14 mm and 10 mm. The limits the case is held against decide it, and for the railroad’s
 * own limits the set whose classes they use; not the units the case is shown in, which change no finding.
 */
export const measuringPractice = ({ rules }: Pick<Context, 'rules'>): UnitSystem =>
  rules.track !== undefined && rules.track.classes === ruleSetById(EUROPEAN_SET)?.classes ? 'metric' : 'us';
