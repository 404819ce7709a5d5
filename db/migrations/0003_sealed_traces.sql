CREATE TRIGGER `trace_sealed` BEFORE UPDATE OF `id`, `case_id`, `created_at`, `shape`, `subject_kind`, `subject_id`, `side`, `sha256`, `file_name`, `making`, `points`, `points_sha256`, `uncertainty` ON `trace`
BEGIN
	SELECT RAISE(ABORT, 'the line of an outline and how it was made are never overwritten');
END;
--> statement-breakpoint
CREATE TRIGGER `trace_no_delete` BEFORE DELETE ON `trace`
BEGIN
	SELECT RAISE(ABORT, 'an outline is never deleted; remove it with a reason');
END;
--> statement-breakpoint
CREATE TRIGGER `own_shape_sealed` BEFORE UPDATE OF `id`, `case_id`, `created_at`, `shape`, `name`, `source`, `sha256`, `file_name`, `points`, `points_sha256` ON `own_shape`
BEGIN
	SELECT RAISE(ABORT, 'a reference shape is never overwritten');
END;
--> statement-breakpoint
CREATE TRIGGER `own_shape_no_delete` BEFORE DELETE ON `own_shape`
BEGIN
	SELECT RAISE(ABORT, 'a reference shape is never deleted; remove it with a reason');
END;
