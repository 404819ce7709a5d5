CREATE TRIGGER `reading_no_update` BEFORE UPDATE ON `reading`
BEGIN
	SELECT RAISE(ABORT, 'a reading is never overwritten; add a row that replaces it');
END;
--> statement-breakpoint
CREATE TRIGGER `reading_no_delete` BEFORE DELETE ON `reading`
BEGIN
	SELECT RAISE(ABORT, 'a reading is never overwritten; add a row that replaces it');
END;
--> statement-breakpoint
CREATE TRIGGER `change_log_no_update` BEFORE UPDATE ON `change_log`
BEGIN
	SELECT RAISE(ABORT, 'the log of changes cannot be altered');
END;
--> statement-breakpoint
CREATE TRIGGER `change_log_no_delete` BEFORE DELETE ON `change_log`
BEGIN
	SELECT RAISE(ABORT, 'the log of changes cannot be altered');
END;
--> statement-breakpoint
CREATE TRIGGER `recorder_channel_no_update` BEFORE UPDATE ON `recorder_channel`
BEGIN
	SELECT RAISE(ABORT, 'recorder data are never overwritten');
END;
--> statement-breakpoint
CREATE TRIGGER `recorder_channel_no_delete` BEFORE DELETE ON `recorder_channel`
BEGIN
	SELECT RAISE(ABORT, 'recorder data are never overwritten');
END;
--> statement-breakpoint
CREATE TRIGGER `recorder_chunk_no_update` BEFORE UPDATE ON `recorder_chunk`
BEGIN
	SELECT RAISE(ABORT, 'recorder data are never overwritten');
END;
--> statement-breakpoint
CREATE TRIGGER `recorder_chunk_no_delete` BEFORE DELETE ON `recorder_chunk`
BEGIN
	SELECT RAISE(ABORT, 'recorder data are never overwritten');
END;
