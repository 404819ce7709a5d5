CREATE TABLE `line_stretch` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`name` text,
	`hand` text,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "line_stretch_removal" CHECK(("line_stretch"."removed_at" is null and "line_stretch"."removed_reason" is null) or ("line_stretch"."removed_at" is not null and coalesce(length("line_stretch"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `line_stretch_case_id_id` ON `line_stretch` (`case_id`,`id`);