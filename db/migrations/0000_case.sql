CREATE TABLE `case_file` (
	`id` text PRIMARY KEY NOT NULL,
	`created_at` text NOT NULL,
	`number` text NOT NULL,
	`title` text NOT NULL,
	`occurred_at` text,
	`time_zone` text,
	`railroad` text,
	`subdivision` text,
	`milepost` text,
	`track` text,
	`direction` text,
	`track_class` text,
	`alignment` text,
	`track_material` text,
	`weather` text,
	`narrative` text,
	`units` text NOT NULL,
	`rule_set` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `change_log` (
	`case_id` text NOT NULL,
	`seq` integer NOT NULL,
	`at` text NOT NULL,
	`actor_person_id` text,
	`actor_name` text NOT NULL,
	`action` text NOT NULL,
	`subject_kind` text NOT NULL,
	`subject_id` text,
	`before` text NOT NULL,
	`after` text NOT NULL,
	`prev_hash` text NOT NULL,
	`hash` text NOT NULL,
	PRIMARY KEY(`case_id`, `seq`),
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `import_mapping` (
	`railroad` text NOT NULL,
	`import_kind` text NOT NULL,
	`mapping` text NOT NULL,
	`updated_at` text NOT NULL,
	PRIMARY KEY(`railroad`, `import_kind`)
);
--> statement-breakpoint
CREATE TABLE `instrument` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`name` text NOT NULL,
	`kind` text NOT NULL,
	`resolution` text,
	`standard_uncertainty` text,
	`calibrated_on` text,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "instrument_removal" CHECK(("instrument"."removed_at" is null and "instrument"."removed_reason" is null) or ("instrument"."removed_at" is not null and coalesce(length("instrument"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `instrument_case_id_id` ON `instrument` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `judgement_change` (
	`case_id` text NOT NULL,
	`path` text NOT NULL,
	`value` real NOT NULL,
	`reason` text NOT NULL,
	`person_id` text,
	`at` text NOT NULL,
	PRIMARY KEY(`case_id`, `path`),
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`person_id`) REFERENCES `person`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "judgement_reason" CHECK(length("judgement_change"."reason") > 0)
);
--> statement-breakpoint
CREATE TABLE `mark` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`type` text NOT NULL,
	`rail` text NOT NULL,
	`appearance` text,
	`is_pod` integer,
	`made_by` text,
	`walked_back_ft` text,
	`disturbance` text,
	`description` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "mark_removal" CHECK(("mark"."removed_at" is null and "mark"."removed_reason" is null) or ("mark"."removed_at" is not null and coalesce(length("mark"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `mark_case_id_id` ON `mark` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `narrative` (
	`case_id` text PRIMARY KEY NOT NULL,
	`summary` text NOT NULL,
	`determination` text NOT NULL,
	`signatories` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `person` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`name` text NOT NULL,
	`role` text NOT NULL,
	`organisation` text,
	`contact` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "person_removal" CHECK(("person"."removed_at" is null and "person"."removed_reason" is null) or ("person"."removed_at" is not null and coalesce(length("person"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `person_case_id_id` ON `person` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `photo` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`sha256` text NOT NULL,
	`file_name` text NOT NULL,
	`mime` text NOT NULL,
	`bytes` integer NOT NULL,
	`width` integer NOT NULL,
	`height` integer NOT NULL,
	`taken_at` text,
	`latitude` real,
	`longitude` real,
	`caption` text NOT NULL,
	`subject_kind` text,
	`subject_id` text,
	`person_id` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`person_id`) REFERENCES `person`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "photo_removal" CHECK(("photo"."removed_at" is null and "photo"."removed_reason" is null) or ("photo"."removed_at" is not null and coalesce(length("photo"."removed_reason"), 0) > 0)),
	CONSTRAINT "photo_subject" CHECK(("photo"."subject_kind" is null) = ("photo"."subject_id" is null)),
	CONSTRAINT "photo_sha256" CHECK(length("photo"."sha256") = 64)
);
--> statement-breakpoint
CREATE INDEX `photo_case` ON `photo` (`case_id`,`sort_order`);--> statement-breakpoint
CREATE TABLE `rail` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`rail` text NOT NULL,
	`where` text NOT NULL,
	`section` text NOT NULL,
	`rolled` text,
	`joint` text,
	`disturbance` text NOT NULL,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "rail_removal" CHECK(("rail"."removed_at" is null and "rail"."removed_reason" is null) or ("rail"."removed_at" is not null and coalesce(length("rail"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `rail_case_id_id` ON `rail` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `reading` (
	`seq` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`id` text NOT NULL,
	`case_id` text NOT NULL,
	`subject_kind` text NOT NULL,
	`subject_id` text NOT NULL,
	`quantity` text NOT NULL,
	`slot` text NOT NULL,
	`entered` text NOT NULL,
	`unit` text NOT NULL,
	`value` real,
	`state` text,
	`examined` real,
	`instrument_id` text,
	`person_id` text,
	`taken_at` text,
	`disturbance` text NOT NULL,
	`sampling` text NOT NULL,
	`note` text NOT NULL,
	`replaces` text,
	`reason` text,
	`withdrawn` integer NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`replaces`) REFERENCES `reading`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`instrument_id`) REFERENCES `instrument`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`person_id`) REFERENCES `person`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "reading_value_or_state" CHECK(("reading"."withdrawn" = 0 and ("reading"."value" is null) <> ("reading"."state" is null)) or ("reading"."withdrawn" = 1 and "reading"."value" is null and "reading"."state" is null and "reading"."replaces" is not null)),
	CONSTRAINT "reading_value_finite" CHECK("reading"."value" is null or abs("reading"."value") <= 1.7976931348623157e308),
	CONSTRAINT "reading_reason" CHECK(("reading"."replaces" is null and "reading"."reason" is null) or ("reading"."replaces" is not null and coalesce(length("reading"."reason"), 0) > 0)),
	CONSTRAINT "reading_not_itself" CHECK("reading"."replaces" is null or "reading"."replaces" <> "reading"."id"),
	CONSTRAINT "reading_examined" CHECK("reading"."examined" is null or ("reading"."state" is not null and "reading"."examined" between 0 and 1)),
	CONSTRAINT "reading_disturbance" CHECK("reading"."disturbance" in ('undisturbed', 'disturbed', 'repaired', 'notSaid')),
	CONSTRAINT "reading_sampling" CHECK("reading"."sampling" in ('every', 'worst', 'picked', 'notSaid'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `reading_id_unique` ON `reading` (`id`);--> statement-breakpoint
CREATE INDEX `reading_case` ON `reading` (`case_id`,`seq`);--> statement-breakpoint
CREATE UNIQUE INDEX `reading_replaced_once` ON `reading` (`replaces`);--> statement-breakpoint
CREATE UNIQUE INDEX `reading_case_id_id` ON `reading` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `recorder_channel` (
	`run_id` text NOT NULL,
	`channel` text NOT NULL,
	`unit` text NOT NULL,
	`sort_order` integer NOT NULL,
	`samples_sha256` text NOT NULL,
	PRIMARY KEY(`run_id`, `channel`),
	FOREIGN KEY (`run_id`) REFERENCES `recorder_run`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `recorder_chunk` (
	`run_id` text NOT NULL,
	`channel` text NOT NULL,
	`chunk` integer NOT NULL,
	`samples` blob NOT NULL,
	PRIMARY KEY(`run_id`, `channel`, `chunk`),
	FOREIGN KEY (`run_id`) REFERENCES `recorder_run`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "recorder_chunk_whole" CHECK(length("recorder_chunk"."samples") > 0 and length("recorder_chunk"."samples") % 8 = 0)
);
--> statement-breakpoint
CREATE TABLE `recorder_run` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`name` text NOT NULL,
	`vehicle_id` text,
	`file_name` text NOT NULL,
	`sha256` text NOT NULL,
	`rows` integer NOT NULL,
	`clock_offset_s` real NOT NULL,
	`note` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`vehicle_id`) REFERENCES `vehicle`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "recorder_run_removal" CHECK(("recorder_run"."removed_at" is null and "recorder_run"."removed_reason" is null) or ("recorder_run"."removed_at" is not null and coalesce(length("recorder_run"."removed_reason"), 0) > 0)),
	CONSTRAINT "recorder_run_sha256" CHECK(length("recorder_run"."sha256") = 64)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `recorder_run_case_id_id` ON `recorder_run` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `staged_import` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`kind` text NOT NULL,
	`file_name` text NOT NULL,
	`sha256` text NOT NULL,
	`mapping` text,
	`created_at` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `standing` (
	`case_id` text NOT NULL,
	`explanation` text NOT NULL,
	`standing` text NOT NULL,
	`reason` text NOT NULL,
	`person_id` text,
	`at` text NOT NULL,
	PRIMARY KEY(`case_id`, `explanation`),
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`person_id`) REFERENCES `person`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "standing_kind" CHECK("standing"."standing" in ('excluded', 'stands')),
	CONSTRAINT "standing_reason" CHECK(length("standing"."reason") > 0)
);
--> statement-breakpoint
CREATE TABLE `statement` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`person` text NOT NULL,
	`taken_by` text,
	`taken_at` text,
	`manner` text,
	`text` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`person`) REFERENCES `person`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`taken_by`) REFERENCES `person`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "statement_removal" CHECK(("statement"."removed_at" is null and "statement"."removed_reason" is null) or ("statement"."removed_at" is not null and coalesce(length("statement"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `statement_case_id_id` ON `statement` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `station` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`name` text NOT NULL,
	`disturbance` text NOT NULL,
	`joint` text,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "station_removal" CHECK(("station"."removed_at" is null and "station"."removed_reason" is null) or ("station"."removed_at" is not null and coalesce(length("station"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `station_case_id_id` ON `station` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `truck` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`vehicle` text NOT NULL,
	`end` text NOT NULL,
	`design` text,
	`side_bearings` text,
	`measured_where` text,
	`disturbance` text NOT NULL,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`vehicle`) REFERENCES `vehicle`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "truck_removal" CHECK(("truck"."removed_at" is null and "truck"."removed_reason" is null) or ("truck"."removed_at" is not null and coalesce(length("truck"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `truck_case_id_id` ON `truck` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `turnout` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`name` text NOT NULL,
	`frog_number` text,
	`hand` text,
	`movement` text NOT NULL,
	`lined` text,
	`point_read` text,
	`point_protection` text,
	`lock_and_throw` text,
	`disturbance` text NOT NULL,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "turnout_removal" CHECK(("turnout"."removed_at" is null and "turnout"."removed_reason" is null) or ("turnout"."removed_at" is not null and coalesce(length("turnout"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `turnout_case_id_id` ON `turnout` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `vehicle` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`position` integer NOT NULL,
	`mark` text NOT NULL,
	`number` text NOT NULL,
	`type` text NOT NULL,
	`load` text,
	`lading` text,
	`hazmat` integer,
	`leading_end` text,
	`derailed` integer,
	`first_derailed` integer,
	`derailed_trucks` text,
	`derailed_axles` text,
	`derailed_side` text,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "vehicle_removal" CHECK(("vehicle"."removed_at" is null and "vehicle"."removed_reason" is null) or ("vehicle"."removed_at" is not null and coalesce(length("vehicle"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `vehicle_case_id_id` ON `vehicle` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `wheel_defect` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`wheelset` text NOT NULL,
	`side` text NOT NULL,
	`type` text NOT NULL,
	`appearance` text,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`wheelset`) REFERENCES `wheelset`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "wheel_defect_removal" CHECK(("wheel_defect"."removed_at" is null and "wheel_defect"."removed_reason" is null) or ("wheel_defect"."removed_at" is not null and coalesce(length("wheel_defect"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `wheel_defect_case_id_id` ON `wheel_defect` (`case_id`,`id`);--> statement-breakpoint
CREATE TABLE `wheelset` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`vehicle` text NOT NULL,
	`axle` integer NOT NULL,
	`first_derailed` integer,
	`wheel_design` text,
	`measured_where` text,
	`disturbance` text NOT NULL,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`vehicle`) REFERENCES `vehicle`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "wheelset_removal" CHECK(("wheelset"."removed_at" is null and "wheelset"."removed_reason" is null) or ("wheelset"."removed_at" is not null and coalesce(length("wheelset"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `wheelset_case_id_id` ON `wheelset` (`case_id`,`id`);