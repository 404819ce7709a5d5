import type { TracedShape } from '~/lib/case/trace';

/** In which order pins are typed, and which way they count. */
export const PIN_ORDER: Readonly<Record<TracedShape, string>> = {
  wheel:
    'One to a line, from the back of the flange to the field side; the farther towards the rail the larger. - for a pin that was not read.',
  rail: 'One to a line, from the gauge side over the top to the field side; the higher the larger. - for a pin that was not read.',
  point:
    'One to a line, from the back, which lies against the stock rail, over the top to the gauge side; the higher the larger. The first pin touches the back edge. - for a pin that was not read.',
};

/** Where the line on a picture starts and ends. */
export const LINE_ORDER: Readonly<Record<TracedShape, string>> = {
  wheel:
    'Start the line low on the back of the flange and go over its tip and along the tread to the field side; between your points the pencil line is followed.',
  rail: 'Start the line on the gauge side, as low as the outline goes, and go over the top to the field side; between your points the pencil line is followed.',
  point:
    'Start the line low on the back, which lies against the stock rail, and go over the top and down the gauge side; between your points the pencil line is followed.',
};

/** How a point has to be drawn, since nothing of it shows how it was held. */
export const HELD_SQUARE =
  'Trace the point alone, without the stock rail, the upright of the drawing square to the plane of the track. Gap and depth read at the same distance behind the tip put it in its place.';
