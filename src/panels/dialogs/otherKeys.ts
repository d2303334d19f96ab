/** Keys that belong to one part of the window, beside those of the list of commands. */
export const elsewhere: readonly (readonly [part: string, rows: readonly (readonly [string, string])[]])[] = [
  [
    "From part to part",
    [
      ["The steps, the plan, what stands below it, the panel", "F6"],
      ["Straight to the first field of the step's panel", "Shift + F6"],
      ["From field to field within a part", "Tab"],
      ["From tool to tool, and among choices that stand in a row", "arrows"],
    ],
  ],
  [
    "While drawing",
    [
      ["Choose the kind, or the way to draw, before the first place", "Tab, Enter"],
      ["A length, then its bearing", "type, Tab, type, Enter"],
      ["A place so far east and north of the plan's origin", "12, 5 or 5 S, 12 W"],
      ["A place so far east and north of the last one", "@12, 5 or @5 S, 12 W"],
      ["Lock the direction east, north, west or south", "arrows"],
      ["Lock it along the line under the pointer", "A"],
      ["Lock it perpendicular to that line", "P"],
      ["Lock it to touch the round under the pointer", "T"],
      ["Keep the present direction", "K"],
      ["Choose the wall that faces that way for a door or window", "arrows"],
      ["Move that along its wall", "Shift + arrows"],
      ["Let the lock go; step back", "Esc"],
      ["Let snaps go", "hold Shift"],
    ],
  ],
  [
    "What is on the plan",
    [
      ["Add to what is selected, or leave one out", "Mod+click"],
      ["Select all that a box touches", "Shift + drag"],
      ["Drag a copy", "Alt + drag"],
      ["Move by a small step, by ten of them", "arrows, Shift + arrows"],
      ["Zoom, turn the plan", "wheel, Shift + wheel"],
      ["Move the plan", "Space + drag, middle button"],
      ["The menu of what is under the pointer", "right click, Shift + F10"],
    ],
  ],
  [
    "Level book and tables",
    [
      ["Go from cell to cell", "arrows, Tab"],
      ["Change a cell", "type, or F2"],
      ["Keep it and go down; add a row at the end", "Enter"],
      ["Take the typing back", "Esc"],
      ["Clear a cell", "Delete"],
      ["Choose a block of cells", "Shift + arrows, or drag"],
      ["Choose whole rows", "Shift + Space, or the row's number"],
      ["Fill the first row of what is chosen down", "Mod+D"],
      ["Find words in it", "Mod+F"],
      ["Put the rows in a column's order, for the eye", "click its head"],
      ["Remove the rows", "Mod+Delete"],
    ],
  ],
];
