/** A page with nothing but the host on it, so that tests reach it without the program around it. */
import { chooseHost } from "../../src/host";

Object.assign(window, { host: chooseHost() });
