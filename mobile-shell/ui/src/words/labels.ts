// Words for what the core names by a mark: states, kinds, answers.
import type {
  AnswerWord,
  Binding,
  BrakeKind,
  ChainJoint,
  ChainKind,
  ChainSize,
  CureState,
  CurrentList,
  End,
  FillKind,
  FluidGrade,
  JobState,
  LightSource,
  Lubrication,
  PartState,
  ProductKind,
  PutOn,
  RidingState,
  ScrewPlace,
  SpeedometerDrive,
  Stage,
  Standing,
  TappedInto,
  Use,
  Verdict,
  Weight,
} from '../app/wire.ts';

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
