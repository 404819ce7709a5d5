import { SAFETY_POINTS } from '../../case/safety';
import type { Section } from '../report';
import { bold } from '../type/inline';

export const safetySection: Section = {
  id: 'safety',
  title: 'Safety and scope',
  kind: 'numbered',
  startsPage: true,
  build(_, writer) {
    writer.text(
      'This notice belongs to every report. It holds for anyone who goes to the site, and for anyone who reads a number in these pages.',
      { after: 9 },
    );
    for (const { title, text } of SAFETY_POINTS) writer.text([bold(`${title}. `), { text }], { after: 8 });
    writer.heading('How to read this report');
    writer.list([
      [
        { text: 'R', face: 'bold' },
        {
          text: ' with a number is a reading; each is listed in appendix A with who took it, when, with what, and how well it is known. ',
        },
        { text: 'E', face: 'bold' },
        { text: ' is a recorder file, ' },
        { text: 'F', face: 'bold' },
        { text: ' a finding computed from readings, ' },
        { text: 'M', face: 'bold' },
        { text: ' the method it was computed by (appendix B), ' },
        { text: 'P', face: 'bold' },
        { text: ' a photo.' },
      ],
      'A value is followed by its expanded uncertainty U with coverage factor k = 2: about 95 in 100 such intervals hold the true value (JCGM 100:2008, 6.3.3).',
      'Seen, looked for and not found, could not tell, and not looked for are four different records and are kept apart throughout.',
      'Stations and distances along the track are measured from the point of derailment (POD), negative before it, in the direction of travel. Left and right are as seen facing that way.',
    ]);
  },
};
