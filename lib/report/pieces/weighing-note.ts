/** What a weight of evidence is and is not; printed wherever weights are shown. */
export const WEIGHING_NOTE =
  'A weight compares how probable the findings are under two named explanations: 10 decibans are ten times, 20 a hundred times. ' +
  'It is not the probability that an explanation is true, and it is neither a cause nor a fault. What happened is for the investigator to determine.';
