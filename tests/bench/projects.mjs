/** Projects for the benchmarks: the studio demo on an invented slope with as many shots as asked for. */
import { readFileSync } from "node:fs";

/** A small generator with a fixed seed, so that every run times the same project. */
function randomFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function ground(x, y) {
  return 29.6 + 0.021 * y - 0.013 * (x - 18) + 0.1 * Math.sin(x / 6.4 + 0.8) + 0.07 * Math.cos(y / 4.6);
}

/** Text of the project file with `count` shots, spread evenly at random over the lot and its surroundings. */
export function benchProject(count) {
  const project = JSON.parse(readFileSync("demo-projects/pottery-studio.drysill.json", "utf8"));
  const random = randomFrom(count);
  const beam = 31.5;
  // A million places lie a hand apart: within a laser's reach, as a scan of the lot would give them.
  const side = Math.min(120, Math.max(50, Math.sqrt(count)));
  const shots = project.survey.shots.slice(0, 1);
  for (let i = 1; i < count; i++) {
    const x = 18 + (random() - 0.5) * side;
    const y = 15 + (random() - 0.5) * side;
    const m = Math.round((beam - ground(x, y)) * 1000) / 1000;
    shots.push({
      id: `s${i + 1}`,
      name: String(i),
      setup: "u1",
      reading: { text: `${m.toFixed(3)} m`, m },
      kind: "ground",
      place: { kind: "at", x: Math.round(x * 1000) / 1000, y: Math.round(y * 1000) / 1000 },
    });
  }
  project.name = `Bench, ${count} shots`;
  project.survey.setups[0].assumedBeam = { text: "31.5 m", m: beam };
  project.survey.shots = shots;
  return JSON.stringify(project);
}
