// Words for what the core names by a mark: states, kinds, answers.
import type {
  AnswerWord,
  Binding,
  BrakeKind,
  CapFit,
  ChainJoint,
  ChainKind,
  ChainSize,
  ChargingPattern,
  ChargingTest,
  CureState,
  CurrentList,
  End,
  FillKind,
  FlasherKind,
  FluidGrade,
  JobState,
  LampCap,
  LampLook,
  Layer,
  LightSource,
  Lubrication,
  PaintedPart,
  PartState,
  PilotFitting,
  ProcessState,
  ProductKind,
  PutOn,
  RidingState,
  ScrewPlace,
  SpeedometerDrive,
  Stage,
  Standing,
  StayPlace,
  TappedInto,
  TestVerdict,
  Use,
  Verdict,
  Weight,
} from '../../door/wire.ts';

export const cureState: Record<CureState, string> = {
  wet: 'wet',
  touchDry: 'touch dry',
  recoatOpen: 'recoat window open',
  recoatShut: 'recoat window shut',
  handle: 'may be handled',
  cured: 'fully cured',
};
export const stage: Record<Stage, string> = {
  stripDown: 'Strip down',
  repair: 'Repair',
  build: 'Build up',
  electrics: 'Electrics',
  prove: 'Prove',
};
export const jobState: Record<JobState, string> = { open: 'not begun', begun: 'begun', done: 'done' };
export const partState: Record<PartState, string> = { wanted: 'wanted', ordered: 'ordered', here: 'here', fitted: 'fitted' };
export const verdict: Record<Verdict, string> = { pass: 'meets it', fail: 'would fail', unknown: 'not known', doesNotApply: 'does not apply' };
export const answer: Record<AnswerWord, string> = { good: 'Good', notGood: 'Not good', notChecked: 'Not checked', doesNotApply: 'Does not apply' };
export const weight: Record<Weight, string> = { note: 'Note.', care: 'Take care.', stopper: 'Stopper.' };
export const standing: Record<Standing, string> = {
  seen: 'text seen',
  secondHand: 'unconfirmed: second-hand',
  memory: 'unconfirmed: from memory',
  computed: 'computed',
  commonPractice: 'common practice',
  entered: 'entered by you',
  invented: 'invented for the demo bike',
};
export const riding: Record<RidingState, string> = {
  standing: 'Engine off',
  day: 'By day',
  lights: 'Lights on',
  busy: 'Lights, brake, indicator',
};
export const use: Record<Use, string> = {
  steady: 'whenever the key is on',
  lights: 'with the lights on',
  braking: 'while braking',
  indicating: 'while indicating',
  moment: 'now and then',
};
export const lightSource: Record<LightSource, string> = {
  filament: 'filament lamp',
  led: 'LED',
  motor: 'motor or horn',
  electronics: 'coil or electronics',
};
export const chainSize: Record<ChainSize, string> = {
  c415: '415',
  c420: '420',
  c428: '428',
  c520: '520',
  c525: '525',
  c530: '530',
  c532: '532',
  c630: '630',
};
export const chainKind: Record<ChainKind, string> = { plain: 'plain, without rings', sealed: 'sealed with rings' };
export const chainJoint: Record<ChainJoint, string> = { clip: 'a clip link', rivet: 'a rivet link', endless: 'nothing: it is endless' };
export const speedometer: Record<SpeedometerDrive, string> = {
  gearbox: 'gearbox or its sprocket',
  frontWheel: 'front wheel',
  rearWheel: 'rear wheel',
};
export const brakeKind: Record<BrakeKind, string> = { disc: 'hydraulic disc', drum: 'drum by rod or cable' };
export const productKind: Record<ProductKind, string> = {
  paint: 'colour coat',
  primer: 'primer',
  clear: 'clear coat',
  rustConverter: 'rust converter',
  tankLiner: 'tank liner',
  sealant: 'gasket sealant',
  epoxy: 'epoxy or adhesive',
  threadLock: 'thread lock',
};
export const end: Record<End, string> = { front: 'Front', rear: 'Rear' };
export const fluidGrade: Record<FluidGrade, string> = { dot3: 'DOT 3', dot4: 'DOT 4', dot5: 'DOT 5, silicone', dot51: 'DOT 5.1', mineral: 'mineral oil' };
export const fillKind: Record<FillKind, string> = { drain: 'after draining', withFilter: 'with a new filter', afterStripDown: 'after a strip-down, dry' };
export const lubrication: Record<Lubrication, string> = { dry: 'dry and clean', oiled: 'a drop of oil', paste: 'grease or paste', threadLock: 'thread lock' };
export const tappedInto: Record<TappedInto, string> = {
  steel: 'steel',
  castIron: 'cast iron',
  wroughtAluminium: 'wrought aluminium',
  castAluminium: 'cast aluminium',
};
export const screwPlace: Record<ScrewPlace, string> = {
  brake: 'brake',
  axle: 'axle',
  engineMount: 'engine mount',
  steering: 'steering',
  insideEngine: 'inside the engine',
  cover: 'engine cover',
  bodywork: 'bodywork',
};
export const putOn: Record<PutOn, string> = {
  brush: 'brush',
  roller: 'roller',
  aerosol: 'spray can',
  gun: 'spray gun',
  lowPressureGun: 'spray gun, low pressure',
};
export const currentList: Record<CurrentList, string> = {
  conservative: 'bundled in a vehicle, the lowest',
  towing: 'towing cable',
  thinWall: 'thin-wall, single, in free air',
};
export const binding: Record<Binding, string> = {
  smallest: 'the thinnest wire of the list will do',
  drop: 'the next thinner one loses too much voltage',
  current: 'the next thinner one may not carry the current',
  fuse: 'no fuse carries the load and still protects the next thinner one',
};
export const flasherKind: Record<FlasherKind, string> = {
  thermal: 'thermal, two terminals',
  electronicTwo: 'electronic, two terminals',
  electronicThree: 'electronic with its own earth, three',
};
export const pilotFitting: Record<PilotFitting, string> = {
  betweenSides: 'one, between the two sides',
  oneWithDiodes: 'one to earth, through two diodes',
  oneEachSide: 'one on each side',
};
export const lampLook: Record<LampLook, string> = { off: 'dark', glow: 'glows', dim: 'dim', full: 'bright' };
export const lampCap: Record<LampCap, string> = {
  ba9s: 'BA9s, 9 mm bayonet',
  ba15s: 'BA15s, 15 mm bayonet, one contact',
  ba15d: 'BA15d, 15 mm bayonet, two contacts',
  bau15s: 'BAU15s, pins 150° apart',
  bay15d: 'BAY15d, pins at two heights',
  ba20d: 'BA20d, 20 mm bayonet',
  w2d: 'W2.1x9.5d, glass wedge',
  w3d: 'W3x16d, wide glass wedge',
  w3q: 'W3x16q, wide wedge, two filaments',
  sv8: 'SV8.5, tube with two cones',
  p43t: 'P43t, three blades',
  px43t: 'PX43t, three blades, other lugs',
  p45t: 'P45t, large round flange',
  px13s: 'PX13.5s, small flange',
  e10: 'E10, screw',
};
export const capFit: Record<CapFit, string> = { fits: 'It fits the holder', doesNotFit: 'It does not fit the holder', unknown: 'Whether it fits is not known' };
export const chargingTest: Record<ChargingTest, string> = { rested: 'Rested', idle: 'At idle', fast: 'At 5,000 rpm', drain: 'Key off, current' };
export const testVerdict: Record<TestVerdict, string> = { good: 'good', low: 'too low', high: 'too high', unknown: 'not measured' };
export const chargingPattern: Record<ChargingPattern, string> = {
  healthy: 'charges',
  batteryOrDrain: 'battery or drain',
  notCharging: 'does not charge',
  weakCharging: 'charges weakly',
  overcharging: 'charges too much',
  notEnoughKnown: 'not enough measured',
};
export const layer: Record<Layer, string> = { base: 'base', colour: 'colour', decal: 'decal', clear: 'clear' };
export const paintedPart: Record<PaintedPart, string> = {
  tank: 'Fuel tank',
  mudguard: 'Mudguard',
  sidePanel: 'Side panel',
  wheel: 'Wheel',
  frame: 'Frame',
  other: 'Something else',
};
export const processState: Record<ProcessState, string> = {
  ready: 'nothing is on yet',
  tooSoon: 'too soon',
  open: 'window open',
  sandFirst: 'sand first',
  sanded: 'sanded',
  allOn: 'all coats are on',
  cured: 'fully cured',
};
export const stayPlace: Record<StayPlace, string> = {
  garage: 'In the garage',
  house: 'In the house',
  heatLamp: 'Under a heat lamp',
  elsewhere: 'Somewhere else',
};
