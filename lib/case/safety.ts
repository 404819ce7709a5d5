/**
 * The safety and scope notice, shown with every page of a case and printed in every report.
 * The wording is the project's own; what it asks for is what the railroads' own on-track
 * protection rules (in the United States, 49 CFR part 214 subpart C) and the incident commander
 * of a hazardous-materials response (29 CFR 1910.120(q)(3)) already require.
 */
export const SAFETY_SHORT =
  'Track is live until the railroad says otherwise: protection and job briefing first. Derailed equipment moves. ' +
  'Hazardous materials: stay out until cleared. Results are aids to judgement.';

export type SafetyPoint = { readonly title: string; readonly text: string };

export const SAFETY_POINTS: readonly SafetyPoint[] = [
  {
    title: 'On-track protection and job briefing',
    text:
      'Track is live until the railroad says otherwise. Work only under the railroad’s own on-track protection, ' +
      'after a job briefing that everyone on site has heard, and brief again when people, tracks or plans change. ' +
      'Adjacent tracks count. Nobody measures alone and unseen.',
  },
  {
    title: 'Derailed equipment moves',
    text:
      'A leaning car settles, couplers under tension let go, loads shift, springs and brake cylinders hold energy, ' +
      'and displaced rail is a spring that may be released by a cut. Do not go under, between or downhill of ' +
      'equipment until whoever is in charge of the site has made it safe. Stay clear of lifts and of cables.',
  },
  {
    title: 'Hazardous materials',
    text:
      'Stay out until the incident commander clears the site. Read the consist before approaching; stay uphill and ' +
      'upwind; an unplacarded car is not thereby a safe one. Leave at once if anything smokes, hisses, leaks or smells.',
  },
  {
    title: 'Results are aids to judgement',
    text:
      'What this tool computes rests on the readings that were entered and on stated methods with stated limits. ' +
      'A number without an undisturbed reading behind it is worth little, however many digits it has.',
  },
  {
    title: 'Who decides',
    text:
      'The railroad’s own rules, the interchange rules in force and the regulator decide. Measurements for ' +
      'compliance are made by people qualified for them, with instruments in calibration. Limits shown here are cited so ' +
      'that they can be looked up; where the cited text differs, the cited text holds.',
  },
  {
    title: 'What this is not',
    text:
      'Nothing here is a determination of cause, fault or fitness for service. The tool weighs what was observed; ' +
      'the investigator writes the determination and answers for it.',
  },
];
