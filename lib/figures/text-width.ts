/**
 * Advance widths of DejaVu Sans (regular and bold), thousandths of the letter size, in the order of
 * `LETTERS`. Read from the font files of npm dejavu-fonts-ttf 2.37.3; a test measures them again.
 * Kept as numbers because a figure is laid out where no font can be opened.
 */
const LETTERS =
  ' !"#$%&\'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~°±²³µ·¼½¾×÷–—‘’“”…′″−≤≥≈√∞←↑→↓↔⅛⅜⅝⅞ΔΣβδθλμπφäöüé';

const REGULAR =
  '318 401 460 838 636 950 780 275 390 390 500 838 318 361 318 337 636 636 636 636 636 636 636 636 ' +
  '636 636 337 337 838 838 838 531 1000 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 ' +
  '603 787 695 635 611 732 684 989 685 611 685 390 337 390 838 500 500 613 635 550 635 615 352 635 ' +
  '634 278 278 579 278 974 634 612 635 635 411 521 392 634 592 818 592 592 525 636 337 636 838 500 ' +
  '838 401 401 636 318 969 969 969 838 838 500 1000 318 318 518 518 1000 227 374 838 838 838 838 637 ' +
  '833 838 838 838 838 838 969 969 969 969 684 632 638 612 612 592 636 602 660 613 612 634 615 ';

const BOLD =
  '348 456 521 838 696 1002 872 306 457 457 523 838 380 415 380 365 696 696 696 696 696 696 696 696 ' +
  '696 696 400 400 838 838 838 580 1000 774 762 734 830 683 683 821 837 372 372 775 637 995 837 850 ' +
  '733 850 770 720 682 812 774 1103 771 724 725 457 365 457 838 500 500 675 716 593 716 678 435 716 ' +
  '712 343 343 665 343 1042 712 687 716 716 493 595 478 712 652 924 645 652 582 712 365 712 838 500 ' +
  '838 438 438 736 380 1035 1035 1035 838 838 500 1000 380 380 657 657 1000 264 447 838 838 838 838 667 ' +
  '833 838 838 838 838 838 1035 1035 1035 1035 774 683 716 687 687 633 736 791 782 675 687 712 678 ';

/** Wider than nearly every letter not in the table, so that an estimate errs towards more room. */
const OTHER = 800;

const table = (widths: string): ReadonlyMap<string, number> => {
  const numbers = widths.trim().split(' ').map(Number);
  return new Map([...LETTERS].map((letter, i) => [letter, numbers[i]!]));
};

const TABLES = { normal: table(REGULAR), bold: table(BOLD) };

/** Width of one line of letters in the drawings' font, figure units, without kerning. */
export function textWidth(text: string, size: number, weight: 'normal' | 'bold' = 'normal'): number {
  let sum = 0;
  for (const letter of text) sum += TABLES[weight].get(letter) ?? OTHER;
  return (sum * size) / 1000;
}

/** The text broken into lines no wider than `width`; a single word may still be wider. */
export function wrapText(
  text: string,
  width: number,
  size: number,
  weight: 'normal' | 'bold' = 'normal',
): readonly string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && textWidth(longer, size, weight) > width) {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  return current === '' ? lines : [...lines, current];
}

/** The text, shortened with an ellipsis when it is wider than `width`. */
export function fitText(
  text: string,
  width: number,
  size: number,
  weight: 'normal' | 'bold' = 'normal',
): string {
  if (textWidth(text, size, weight) <= width) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidth(`${letters.join('').trimEnd()}…`, size, weight) > width)
    letters.pop();
  return letters.length === 0 ? '' : `${letters.join('').trimEnd()}…`;
}
