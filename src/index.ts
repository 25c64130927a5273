export { InputError, type InputErrorCode, OutputError, UsageError } from './errors.js';
export type { ForecastedFile, SourceFile } from './forecast-result.js';
export type {
  Finding,
  FindingId,
  HotSpot,
  PlanReport,
  Severity,
  SideForecast,
  Verdict,
} from './model/forecast-types.js';
export { findProfile } from './profile/find-profile.js';
export { type ProfileFile, parseProfile, readProfile } from './profile/profile-file.js';
export { type ProfileSources, resolveProfile } from './profile/resolve-profile.js';
export { settingsToJson } from './profile/settings-to-json.js';
export { type FindingText, findingText } from './report/finding-text.js';
export { FORMAT, forecastSchema } from './report/forecast-schema.js';
export { forecastDocument, forecastJson } from './report/json.js';
export { sideToJson } from './report/side-json.js';
export type { MachineSettings, Planner, Settings } from './settings.js';
