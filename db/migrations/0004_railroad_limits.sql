CREATE TABLE `railroad_limits` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`version` integer NOT NULL,
	`created_at` text NOT NULL,
	`entered` text NOT NULL,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "railroad_limits_entered" CHECK(length("railroad_limits"."entered") > 0)
);
--> statement-breakpoint
CREATE INDEX `railroad_limits_case` ON `railroad_limits` (`case_id`,`version`);--> statement-breakpoint
CREATE TRIGGER `railroad_limits_sealed` BEFORE UPDATE ON `railroad_limits`
BEGIN
	SELECT RAISE(ABORT, 'limits are never overwritten; enter them again');
END;
--> statement-breakpoint
CREATE TRIGGER `railroad_limits_no_delete` BEFORE DELETE ON `railroad_limits`
BEGIN
	SELECT RAISE(ABORT, 'limits are never deleted');
END;
