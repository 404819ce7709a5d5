PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_trace` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`shape` text NOT NULL,
	`subject_kind` text NOT NULL,
	`subject_id` text NOT NULL,
	`side` text NOT NULL,
	`behind_mm` real,
	`sha256` text NOT NULL,
	`file_name` text NOT NULL,
	`making` text NOT NULL,
	`points` blob NOT NULL,
	`points_sha256` text NOT NULL,
	`uncertainty` text NOT NULL,
	`mirrored` integer NOT NULL,
	`hand` text,
	`distance_run_km` real,
	`instrument_id` text,
	`person_id` text,
	`taken_at` text,
	`disturbance` text NOT NULL,
	`note` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`instrument_id`) REFERENCES `instrument`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`person_id`) REFERENCES `person`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "trace_removal" CHECK(("__new_trace"."removed_at" is null and "__new_trace"."removed_reason" is null) or ("__new_trace"."removed_at" is not null and coalesce(length("__new_trace"."removed_reason"), 0) > 0)),
	CONSTRAINT "trace_shape" CHECK("__new_trace"."shape" in ('wheel', 'rail', 'point')),
	CONSTRAINT "trace_subject" CHECK(("__new_trace"."shape" = 'wheel' and "__new_trace"."subject_kind" = 'wheelset') or ("__new_trace"."shape" = 'rail' and "__new_trace"."subject_kind" = 'rail') or ("__new_trace"."shape" = 'point' and "__new_trace"."subject_kind" = 'turnout')),
	CONSTRAINT "trace_behind" CHECK(("__new_trace"."shape" = 'point' and "__new_trace"."behind_mm" is not null and "__new_trace"."behind_mm" >= 0) or ("__new_trace"."shape" <> 'point' and "__new_trace"."behind_mm" is null)),
	CONSTRAINT "trace_side" CHECK("__new_trace"."side" in ('left', 'right')),
	CONSTRAINT "trace_sha256" CHECK(length("__new_trace"."sha256") = 64 and length("__new_trace"."points_sha256") = 64),
	CONSTRAINT "trace_points_whole" CHECK(length("__new_trace"."points") > 0 and length("__new_trace"."points") % 16 = 0),
	CONSTRAINT "trace_distance" CHECK("__new_trace"."distance_run_km" is null or "__new_trace"."distance_run_km" >= 0),
	CONSTRAINT "trace_disturbance" CHECK("__new_trace"."disturbance" in ('undisturbed', 'disturbed', 'repaired', 'notSaid'))
);
--> statement-breakpoint
INSERT INTO `__new_trace`("id", "case_id", "sort_order", "created_at", "removed_at", "removed_reason", "shape", "subject_kind", "subject_id", "side", "behind_mm", "sha256", "file_name", "making", "points", "points_sha256", "uncertainty", "mirrored", "hand", "distance_run_km", "instrument_id", "person_id", "taken_at", "disturbance", "note") SELECT "id", "case_id", "sort_order", "created_at", "removed_at", "removed_reason", "shape", "subject_kind", "subject_id", "side", NULL, "sha256", "file_name", "making", "points", "points_sha256", "uncertainty", "mirrored", "hand", "distance_run_km", "instrument_id", "person_id", "taken_at", "disturbance", "note" FROM `trace`;--> statement-breakpoint
DROP TABLE `trace`;--> statement-breakpoint
ALTER TABLE `__new_trace` RENAME TO `trace`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
CREATE INDEX `trace_case` ON `trace` (`case_id`,`sort_order`);--> statement-breakpoint
CREATE TRIGGER `trace_sealed` BEFORE UPDATE OF `id`, `case_id`, `created_at`, `shape`, `subject_kind`, `subject_id`, `side`, `behind_mm`, `sha256`, `file_name`, `making`, `points`, `points_sha256`, `uncertainty` ON `trace`
BEGIN
	SELECT RAISE(ABORT, 'the line of an outline and how it was made are never overwritten');
END;
--> statement-breakpoint
CREATE TRIGGER `trace_no_delete` BEFORE DELETE ON `trace`
BEGIN
	SELECT RAISE(ABORT, 'an outline is never deleted; remove it with a reason');
END;
