PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_rail` (
	`id` text PRIMARY KEY NOT NULL,
	`case_id` text NOT NULL,
	`sort_order` integer NOT NULL,
	`created_at` text NOT NULL,
	`removed_at` text,
	`removed_reason` text,
	`rail` text NOT NULL,
	`where` text NOT NULL,
	`section` text NOT NULL,
	`stock_rail_of` text,
	`rolled` text,
	`joint` text,
	`disturbance` text NOT NULL,
	`note` text,
	FOREIGN KEY (`case_id`) REFERENCES `case_file`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`case_id`,`stock_rail_of`) REFERENCES `turnout`(`case_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "rail_removal" CHECK(("__new_rail"."removed_at" is null and "__new_rail"."removed_reason" is null) or ("__new_rail"."removed_at" is not null and coalesce(length("__new_rail"."removed_reason"), 0) > 0))
);
--> statement-breakpoint
INSERT INTO `__new_rail`("id", "case_id", "sort_order", "created_at", "removed_at", "removed_reason", "rail", "where", "section", "stock_rail_of", "rolled", "joint", "disturbance", "note") SELECT "id", "case_id", "sort_order", "created_at", "removed_at", "removed_reason", "rail", "where", "section", NULL, "rolled", "joint", "disturbance", "note" FROM `rail`;--> statement-breakpoint
DROP TABLE `rail`;--> statement-breakpoint
ALTER TABLE `__new_rail` RENAME TO `rail`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
CREATE UNIQUE INDEX `rail_case_id_id` ON `rail` (`case_id`,`id`);