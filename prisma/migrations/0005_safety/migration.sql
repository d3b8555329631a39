-- Consents, incidents from the deck, releases with a statement, stand-downs that end once, notes on growth; words that
-- only head coaches read.

-- ── Words that only the head coaches of the diver's own club read, whoever wrote them ──
ALTER TABLE "Words" ADD COLUMN "readers" TEXT NOT NULL DEFAULT 'all';
ALTER TABLE "Words" ADD CHECK ("readers" IN ('all', 'head'));
-- Restrictive: it narrows whatever else admits a row, now or later.
CREATE POLICY for_head ON "Words" AS RESTRICTIVE FOR SELECT TO app_user
  USING ("readers" = 'all' OR "diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]));

-- ── Consents: one row each time one is given or withdrawn; the latest of a diver and purpose counts ──
CREATE TABLE "Consent" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "purpose" TEXT NOT NULL,
    "given" BOOLEAN NOT NULL,
    "saidById" UUID NOT NULL,
    "recordedBy" UUID NOT NULL,
    "recordedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Consent_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "Consent_diverId_purpose_recordedAt_idx" ON "Consent"("diverId", "purpose", "recordedAt");
ALTER TABLE "Consent" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Consent" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "Consent" ADD CHECK ("purpose" IN ('record', 'video'));
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "Consent" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

CREATE FUNCTION video_consented(diver uuid) RETURNS boolean LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce((
    SELECT c."given" FROM "Consent" c WHERE c."diverId" = diver AND c."purpose" = 'video'
    ORDER BY c."recordedAt" DESC, c."id" DESC LIMIT 1), false);
END;
REVOKE EXECUTE ON FUNCTION video_consented FROM PUBLIC;
GRANT EXECUTE ON FUNCTION video_consented TO app_user;

-- Without consent a moment is neither stored nor shown; what was stored before comes back when it is given again.
CREATE POLICY shown_by_consent ON "Moment" AS RESTRICTIVE FOR SELECT TO app_user USING (video_consented("diverId"));
CREATE POLICY kept_by_consent ON "Moment" AS RESTRICTIVE FOR INSERT TO app_user WITH CHECK (video_consented("diverId"));

-- ── Incidents: the id is made on the device, so the key is the club's and the id's ──
ALTER TABLE "Incident" DROP CONSTRAINT "Incident_pkey";
ALTER TABLE "Incident" ADD CONSTRAINT "Incident_pkey" PRIMARY KEY ("clubId", "id");
ALTER TABLE "Incident" ADD COLUMN "offsetMs" BIGINT NOT NULL;
ALTER TABLE "Incident" ADD COLUMN "contentDigest" TEXT NOT NULL;
ALTER TABLE "Incident" ADD CHECK ("kind" IN ('contact with the board', 'too close', 'bad landing', 'knock to the head'));

-- After a knock to the head: that medical advice was followed, in words.
ALTER TABLE "Release" ADD COLUMN "statementId" UUID;

-- ── Stand-downs: ended once, by whom and when; an end can only bring its last day forward ──
ALTER TABLE "StandDown" ADD COLUMN "endedBy" UUID;
ALTER TABLE "StandDown" ADD COLUMN "endedAt" TIMESTAMPTZ(3);
ALTER TABLE "StandDown" ADD CHECK (("endedBy" IS NULL) = ("endedAt" IS NULL));
ALTER TABLE "StandDown" ADD CHECK ("endedAt" IS NULL OR "until" IS NOT NULL);

CREATE FUNCTION end_stand_down() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE ending text[] := ARRAY['until', 'endedBy', 'endedAt'];
BEGIN
  IF TG_OP <> 'UPDATE' THEN
    RAISE EXCEPTION 'StandDown is kept: % is refused', TG_OP USING ERRCODE = 'restrict_violation';
  END IF;
  IF OLD."endedAt" IS NOT NULL OR NEW."endedAt" IS NULL THEN
    RAISE EXCEPTION 'a stand-down is ended once' USING ERRCODE = 'restrict_violation';
  END IF;
  IF to_jsonb(OLD) - ending IS DISTINCT FROM to_jsonb(NEW) - ending OR NEW."until" > OLD."until" THEN
    RAISE EXCEPTION 'only the end of a stand-down may be set, and never later' USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
DROP TRIGGER ended_once ON "StandDown";
CREATE TRIGGER ended_once BEFORE UPDATE OR DELETE ON "StandDown" FOR EACH ROW EXECUTE FUNCTION end_stand_down();
GRANT UPDATE ("until", "endedBy", "endedAt") ON "StandDown" TO app_user;
CREATE POLICY ended ON "StandDown" FOR UPDATE TO app_user
  USING ("diverId" = ANY ((SELECT app_head_diver_ids())::uuid[])) WITH CHECK ("endedBy" = (SELECT app_account()));

-- ── Notes on growth: a coach saw that a diver has grown quickly; nothing follows from it but care ──
CREATE TABLE "GrowthNote" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "notedOn" DATE NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "noteId" UUID,

    CONSTRAINT "GrowthNote_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "GrowthNote_diverId_idx" ON "GrowthNote"("diverId");
ALTER TABLE "GrowthNote" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "GrowthNote" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "GrowthNote" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- ── Who sees and writes them ──
ALTER TABLE "Consent" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "GrowthNote" ENABLE ROW LEVEL SECURITY;
GRANT SELECT, INSERT ON "Consent", "GrowthNote" TO app_user;
-- Both are the club's own affair: the programme and a former club have no use for them.
CREATE POLICY seen ON "Consent" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]));
CREATE POLICY seen ON "GrowthNote" FOR SELECT TO app_user USING ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]));
-- A consent is recorded by a head coach; any coach of the club who is told of a withdrawal records it.
CREATE POLICY written ON "Consent" FOR INSERT TO app_user WITH CHECK (
  "recordedBy" = (SELECT app_account()) AND (
    "diverId" = ANY ((SELECT app_head_diver_ids())::uuid[])
    OR (NOT "given" AND "diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]))));
CREATE POLICY written ON "GrowthNote" FOR INSERT TO app_user
  WITH CHECK ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]) AND "by" = (SELECT app_account()));
