/** An amount in the user's own money: whole above a thousand, else to the hundredth. */
export function money(amount: number): string {
  return Math.abs(amount) >= 1000
    ? Math.round(amount)
        .toString()
        .replace(/\B(?=(\d{3})+$)/g, "\u202f")
    : amount.toFixed(2);
}
