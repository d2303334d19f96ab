/** Id of the line that says what the next click does. */
export const hintId = "plan-hint";
