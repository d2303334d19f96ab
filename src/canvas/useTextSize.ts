/** How much larger than usual the person wants words, 1 and more: what is laid out by figures grows with it. */
import { useApp } from "../store/useApp";

export const useTextSize = (): number => useApp(({ preferences }) => preferences.textSize);
