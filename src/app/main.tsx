import "../look/fonts.css";
import "../look/base.css";
import { createRoot } from "react-dom/client";
import { chooseHost } from "../host";
import { showStart } from "../store/actions";
import { appStore } from "../store/store";
import { App } from "./App";
import { Boundary } from "./Boundary";
import { appCommands } from "./commands";
import { tellCrashes } from "./crashes";
import { demos } from "./demos";
import { filesThrough } from "./files";
import { startLayers } from "./layers";
import { startNudgeStep } from "./nudgeStep";
import { startPreferences } from "./preferences";
import { keepRecovery, keepTitle } from "./recovery";
import { answerHost } from "./requests";
import { listenToKeys } from "./shortcuts";
import { startSnapping } from "./snapping";
import { startSolvingThread } from "./solving/thread";
import { startTheme } from "./theme";

const host = chooseHost();
const files = filesThrough(host);
const commands = appCommands(files);
const address = new URLSearchParams(window.location.search);

tellCrashes();
startSolvingThread();
startPreferences();
startTheme(address.get("theme"));
startLayers();
startNudgeStep();
startSnapping();
keepRecovery(host);
keepTitle(host);
answerHost(host, files, commands);
listenToKeys(commands);

const wanted = demos.find(({ id }) => id === address.get("demo"));
if (wanted) await files.openDemo(wanted);
else showStart();
if (!wanted && host.kind === "electron" && appStore.getState().preferences.opens === "last")
  await files.openLast();

const root = document.getElementById("root");
if (root)
  createRoot(root).render(
    <Boundary files={files}>
      <App host={host} files={files} commands={commands} />
    </Boundary>,
  );
