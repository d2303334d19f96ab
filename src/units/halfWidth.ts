/** Figures and signs as wide as a letter of another script, and the ready signs for mm, cm, m² and their like. */
const wide = /[\u3000\u3300-\u33ff\uff01-\uff5e\uffe0-\uffe6]/g;

/** Typed text with signs of full width as their usual kin (NFKC): "１２．５ｍ" is "12.5m". Fractions and primes stay. */
export function halfWidth(text: string): string {
  return text.replace(wide, (sign) => sign.normalize("NFKC"));
}

/** A plain number as it is typed: a comma or a point before its decimals, any minus; NaN where it is none. */
export function parseNumber(text: string): number {
  const plain = halfWidth(text)
    .trim()
    .replace(/[‐‑‒–—−]/, "-")
    .replace(",", ".");
  return plain === "" ? Number.NaN : Number(plain);
}
