-- What has happened is never changed: the database refuses, whoever asks.

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is append-only: % is refused', TG_TABLE_NAME, TG_OP USING ERRCODE = 'restrict_violation';
END $$;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['Call', 'Attempt', 'Observation', 'SignOff', 'Revocation', 'Recognition', 'Decision',
                           'Incident', 'Release', 'Ledger', 'Edition'] LOOP
    EXECUTE format('CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', t);
  END LOOP;
  -- Statement triggers are not copied to partitions, and a partition can be addressed by its own name.
  FOREACH t IN ARRAY ARRAY['Call_default', 'Attempt_default', 'Observation_default'] LOOP
    EXECUTE format('CREATE TRIGGER append_only_partition BEFORE UPDATE OR DELETE OR TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()', t);
  END LOOP;
END $$;

-- A membership or a stand-down is ended once; nothing else about it changes.
CREATE FUNCTION end_once() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE ending text := TG_ARGV[0];
BEGIN
  IF TG_OP <> 'UPDATE' THEN
    RAISE EXCEPTION '% is kept: % is refused', TG_TABLE_NAME, TG_OP USING ERRCODE = 'restrict_violation';
  END IF;
  IF to_jsonb(OLD) ->> ending IS NOT NULL THEN
    RAISE EXCEPTION '%.% is set once', TG_TABLE_NAME, ending USING ERRCODE = 'restrict_violation';
  END IF;
  IF to_jsonb(OLD) - ending IS DISTINCT FROM to_jsonb(NEW) - ending THEN
    RAISE EXCEPTION 'only %.% may be set', TG_TABLE_NAME, ending USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER ended_once BEFORE UPDATE OR DELETE ON "Membership" FOR EACH ROW EXECUTE FUNCTION end_once('to');
CREATE TRIGGER ended_once BEFORE UPDATE OR DELETE ON "DiverMembership" FOR EACH ROW EXECUTE FUNCTION end_once('to');
CREATE TRIGGER ended_once BEFORE UPDATE OR DELETE ON "StandDown" FOR EACH ROW EXECUTE FUNCTION end_once('until');
CREATE TRIGGER kept BEFORE TRUNCATE ON "Membership" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER kept BEFORE TRUNCATE ON "DiverMembership" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER kept BEFORE TRUNCATE ON "StandDown" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- At most one unsuperseded observation of a coach for an attempt. A partitioned table cannot hold that as a unique index,
-- so the one in force stands in a table of its own, moved on by this trigger.
CREATE FUNCTION take_observation_in() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  IF NOT EXISTS (SELECT FROM "Attempt" a WHERE a."clubId" = NEW."clubId" AND a."id" = NEW."attemptId" AND a."diverId" = NEW."diverId") THEN
    RAISE EXCEPTION 'the attempt is not that diver''s' USING ERRCODE = 'foreign_key_violation';
  END IF;
  IF NEW."supersedesId" IS NULL THEN
    INSERT INTO "ObservationHead" ("clubId", "attemptId", "coachId", "observationId")
    VALUES (NEW."clubId", NEW."attemptId", NEW."coachId", NEW."id");
  ELSE
    UPDATE "ObservationHead" SET "observationId" = NEW."id"
    WHERE "clubId" = NEW."clubId" AND "attemptId" = NEW."attemptId" AND "coachId" = NEW."coachId" AND "observationId" = NEW."supersedesId";
    IF NOT FOUND THEN
      RAISE EXCEPTION 'only the observation in force can be superseded, by the coach who made it' USING ERRCODE = 'unique_violation';
    END IF;
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER one_in_force BEFORE INSERT ON "Observation" FOR EACH ROW EXECUTE FUNCTION take_observation_in();

-- The ledger has no gaps: each entry takes the number after the last one of its programme.
CREATE FUNCTION take_entry_in() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW."seq" IS DISTINCT FROM (SELECT "seq" FROM "LedgerHead" WHERE "programmeId" = NEW."programmeId") THEN
    RAISE EXCEPTION 'a ledger entry is appended by append_ledger' USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER gapless BEFORE INSERT ON "Ledger" FOR EACH ROW EXECUTE FUNCTION take_entry_in();
