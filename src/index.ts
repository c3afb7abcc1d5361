// The door: every public name.
export type { Box } from './geometry/box.js';
export type { Matrix } from './geometry/matrix.js';
export type {
  Artboard,
  Artwork,
  Colour,
  Layer,
  NameSource,
  Paint,
  PaintSource,
  Shape,
  ShapeKind,
} from './model/artwork.js';
export type { CheckGroup } from './model/check-kinds.js';
export type { CheckSettings } from './model/check-settings.js';
export type { Correction } from './model/correction.js';
export {
  FINDING_KINDS,
  type Finding,
  type FindingCode,
  type FindingKind,
  type Json,
  type Place,
  type Severity,
} from './model/finding.js';
export type { InspectedLayer, InspectedStroke, Inspection } from './model/inspection.js';
export type {
  CheckResult,
  ComparedCopy,
  ComparedFile,
  Comparison,
  Fitness,
  JobResult,
  LimitChanges,
  Outcome,
  RoadOptions,
  ShapeMatch,
  Stage,
} from './model/job.js';
export type { Fill, Layout, LayoutMethod, SheetRequest, SheetSide } from './model/layout.js';
export {
  type Assignment,
  type Exclusion,
  type Part,
  type Pass,
  type Placement,
  type Reason,
  ROLES,
  type Role,
  type Suggestion,
} from './model/pass.js';
export type { CancelSignal } from './model/platform.js';
export type {
  Entered,
  FigureSource,
  Hazard,
  LikeStretches,
  Machine,
  MachineTimes,
  Material,
  ProfileTool,
  RegisterFigures,
  RegisterMeans,
  ShopOrder,
  ShopProfile,
  TimedRun,
  ToolSettings,
} from './model/profile.js';
export type { ExtentMm, Judgement, PassProof, Proof } from './model/proof.js';
export type {
  CorrectedPass,
  FitKind,
  MarkReading,
  RegisterFit,
  RegisterReport,
  Residual,
} from './model/register.js';
export type {
  Caution,
  Figure,
  RunBudget,
  RunLines,
  RunPass,
  RunRegister,
  RunSettings,
  RunSheet,
  RunTime,
  SheetTurn,
  TurnedPass,
} from './model/run-sheet.js';
export type { Corner, SequenceReport, SequenceRequest, Stayed } from './model/sequence.js';
export { joinPieces, type OutputFile } from './model/sheet.js';
export type { Solid, SolidArea, SolidBlank, SolidHinge, SolidPanel } from './model/solid.js';
export type { Conditions, MarksRequest, PassRequest, Rule, Ticket } from './model/ticket.js';
export type { TieReport, TieRequest } from './model/ties.js';
export { PinbarError } from './model/trouble.js';
export { PINBAR_VERSION } from './model/version.js';
export { check, type InspectOptions, inspect, type NamedFile, split, type VerifyOptions, verify } from './pipeline.js';
export { judgeMarks } from './register/judge-marks.js';
export { type DrawnMarks, readMarks } from './register/read-marks.js';
export type { PassFile } from './road/correct-pass.js';
export { correctPasses, type PassToCorrect } from './road/correct-passes.js';
export { type MadeRunSheet, makeJobRunSheet, makeRunSheet, type RunRequest } from './road/make-run-sheet.js';
export { copiesOf } from './road/read-manifest.js';
export { DEFAULT_LIMITS, type Limits } from './source/source.js';
export { describeStrip, printStrip, type RecordedStep, type StripRecord } from './strip/describe-strip.js';
export { drawRegisterTarget, type TargetRequest } from './strip/draw-register-target.js';
export { drawTestStrip } from './strip/draw-strip.js';
export type { OwnDrawing, SteppedSetting, StripRequest, StripStep } from './strip/strip-request.js';
export { DEFAULT_TICKET } from './ticket/default-ticket.js';
export { parseTake } from './ticket/parse-take.js';
export { readProfile } from './ticket/read-profile.js';
export { readTicket } from './ticket/read-ticket.js';
export { writeTicket } from './ticket/write-ticket.js';
