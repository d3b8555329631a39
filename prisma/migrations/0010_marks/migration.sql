-- What coaches read off a moment's film: where each phase begins, and measures on a paused frame. Numbers and ids only.

-- ── Marks: the latest row of a moment, coach and phase stands; one without a time takes the mark back ──
CREATE TABLE "MomentMark" (
    "id" UUID NOT NULL,
    "momentId" UUID NOT NULL,
    "coachId" UUID NOT NULL,
    "phase" TEXT NOT NULL,
    "atMs" INTEGER,
    "frameUs" INTEGER,
    "markedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "MomentMark_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "MomentMark_momentId_idx" ON "MomentMark"("momentId");
ALTER TABLE "MomentMark" ADD FOREIGN KEY ("momentId") REFERENCES "Moment"("id");
ALTER TABLE "MomentMark" ADD FOREIGN KEY ("coachId") REFERENCES "Account"("id");
ALTER TABLE "MomentMark" ADD CHECK ("atMs" >= 0);
ALTER TABLE "MomentMark" ADD CHECK ("frameUs" BETWEEN 1000 AND 1000000);

-- ── Measures: what was placed, and what the server made of it; a row that takes one back holds neither ──
CREATE TABLE "MomentMeasure" (
    "id" UUID NOT NULL,
    "momentId" UUID NOT NULL,
    "coachId" UUID NOT NULL,
    "inputs" JSONB,
    "results" JSONB,
    "takesBackId" UUID,
    "measuredAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "MomentMeasure_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "MomentMeasure_momentId_idx" ON "MomentMeasure"("momentId");
CREATE UNIQUE INDEX "MomentMeasure_takesBackId_key" ON "MomentMeasure"("takesBackId");
ALTER TABLE "MomentMeasure" ADD FOREIGN KEY ("momentId") REFERENCES "Moment"("id");
ALTER TABLE "MomentMeasure" ADD FOREIGN KEY ("coachId") REFERENCES "Account"("id");
ALTER TABLE "MomentMeasure" ADD FOREIGN KEY ("takesBackId") REFERENCES "MomentMeasure"("id");
ALTER TABLE "MomentMeasure" ADD CHECK (("takesBackId" IS NULL) = ("inputs" IS NOT NULL) AND ("inputs" IS NULL) = ("results" IS NULL));

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "MomentMark" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "MomentMeasure" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- A measure is taken back by the coach who took it.
CREATE FUNCTION take_back_own() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  IF NEW."takesBackId" IS NOT NULL AND NOT EXISTS (
    SELECT FROM "MomentMeasure" m WHERE m."id" = NEW."takesBackId" AND m."coachId" = NEW."coachId"
      AND m."momentId" = NEW."momentId" AND m."takesBackId" IS NULL) THEN
    RAISE EXCEPTION 'a measure is taken back by the coach who took it' USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER taken_back BEFORE INSERT ON "MomentMeasure" FOR EACH ROW EXECUTE FUNCTION take_back_own();
REVOKE EXECUTE ON FUNCTION take_back_own FROM PUBLIC;

-- ── Seen exactly while the moment is: its own policies, with the consent, decide, and an erased link ends it. Written by
-- coaches of the diver's club, as themselves ──
GRANT SELECT, INSERT ON "MomentMark", "MomentMeasure" TO app_user;
DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['MomentMark', 'MomentMeasure'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY seen ON %I FOR SELECT TO app_user USING (EXISTS (
      SELECT FROM "Moment" m WHERE m."id" = "momentId" AND m."link" IS NOT NULL))', t);
    EXECUTE format('CREATE POLICY written ON %I FOR INSERT TO app_user WITH CHECK ("coachId" = (SELECT app_account()) AND EXISTS (
      SELECT FROM "Moment" m WHERE m."id" = "momentId" AND m."link" IS NOT NULL
        AND m."diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[])))', t);
  END LOOP;
END $$;
