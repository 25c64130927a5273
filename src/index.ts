export { createAnalyser, type MotionAnalyser } from './analysis/analyse.js';
export type { FrameRange, FrameSource } from './analysis/frame-source.js';
export type { EdgeWindow, MotionSummary, ProgramChecks, WallMotion } from './analysis/motion.js';
export { readSoundHead, withSound } from './analysis/open-sound.js';
export type { SampleFormat } from './analysis/sample-format.js';
export type { OpenSound, SoundContainer, SoundFile } from './analysis/sound-file.js';
export { readFrames } from './analysis/wav-blocks.js';
export { type OpenWav, readWavHeader, type WavFile, withWav } from './analysis/wav-file.js';
export { InputError, type InputErrorCode, OutputError, UsageError } from './errors.js';
export type { ForecastedFile, SourceFile } from './forecast-result.js';
export { forecastFile, type Request as ForecastRequest } from './forecast-side.js';
export { forecastSide, type SideRequest } from './model/forecast-model.js';
export type {
  ChannelHeadLoad,
  Finding,
  FindingId,
  HeadLoad,
  Headroom,
  HotSpot,
  PlanReport,
  QuarterColumns,
  Severity,
  SideForecast,
  SourceFacts,
  Survives,
  Verdict,
} from './model/forecast-types.js';
export type { HandSettings } from './model/side-plan-input.js';
export type { SideInput } from './open-side.js';
export { findProfile } from './profile/find-profile.js';
export { type ProfileFile, parseProfile, readProfile } from './profile/profile-file.js';
export { type ProfileSources, resolveProfile } from './profile/resolve-profile.js';
export { settingsToJson } from './profile/settings-to-json.js';
export type { ProgramSide, ProgramTrack } from './program/program-side.js';
export type { Failure } from './report/failure.js';
export { type FindingText, findingText } from './report/finding-text.js';
export { FORMAT } from './report/forecast-format.js';
export { type ForecastJson, forecastSchema } from './report/forecast-schema.js';
export { forecastDocument, forecastJson } from './report/json.js';
export { type JsonOptions, sideToJson } from './report/side-json.js';
export type { SideJson } from './report/side-schema.js';
export type { MachineSettings, Planner, Settings } from './settings.js';
export { type LaidOutSide, layOutSide } from './sheet/lay-out-side.js';
export { parseSheet, readSheet, type SheetFile } from './sheet/read-sheet.js';
export { type Sheet, type SheetSide, type SheetTrack, sheetSchema } from './sheet/sheet-schema.js';
export { sideSettings } from './sheet/side-settings.js';
export { furrowVersion } from './version.js';
