export { dxfFile } from "./dxf";
export { geoJsonFile } from "./geoJson";
export { landXmlFile } from "./landXml";
export { type Outgoing, outgoing } from "./outgoing";
export { pointsCsv } from "./pointsCsv";
