/** Decibans with a sign and a minus that is not a hyphen: "+13", "−4", "0". */
export function decibansText(decibans: number): string {
  const whole = Math.round(decibans);
  return whole === 0 ? '0' : whole > 0 ? `+${whole}` : `−${-whole}`;
}
