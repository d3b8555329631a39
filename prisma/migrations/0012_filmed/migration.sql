-- An attempt that was filmed and waits for its clip, and what became of that: linked, or not filmed after all. Neither changes
-- the observation: a link that comes later is a row of its own beside it, and adds to the moments that count.

CREATE TABLE "FilmedAttempt" (
    "attemptId" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "coachId" UUID NOT NULL,
    "clip" INTEGER NOT NULL,
    "filmedAt" TIMESTAMPTZ(3) NOT NULL,
    "offsetMs" BIGINT NOT NULL,
    "receivedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "FilmedAttempt_pkey" PRIMARY KEY ("clubId", "attemptId")
);
CREATE INDEX "FilmedAttempt_diverId_idx" ON "FilmedAttempt"("diverId");
CREATE INDEX "FilmedAttempt_coachId_idx" ON "FilmedAttempt"("coachId");
ALTER TABLE "FilmedAttempt" ADD FOREIGN KEY ("clubId", "attemptId") REFERENCES "Attempt"("clubId", "id");
ALTER TABLE "FilmedAttempt" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "FilmedAttempt" ADD CHECK ("clip" BETWEEN 1 AND 9999);

-- Once for each: its key is the placeholder's.
CREATE TABLE "FilmedOutcome" (
    "attemptId" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "coachId" UUID NOT NULL,
    "outcome" TEXT NOT NULL,
    "momentId" UUID,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "FilmedOutcome_pkey" PRIMARY KEY ("clubId", "attemptId")
);
CREATE INDEX "FilmedOutcome_diverId_idx" ON "FilmedOutcome"("diverId");
ALTER TABLE "FilmedOutcome" ADD FOREIGN KEY ("clubId", "attemptId") REFERENCES "FilmedAttempt"("clubId", "attemptId");
ALTER TABLE "FilmedOutcome" ADD FOREIGN KEY ("momentId") REFERENCES "Moment"("id");
ALTER TABLE "FilmedOutcome" ADD CHECK ("outcome" IN ('linked', 'dropped'));
ALTER TABLE "FilmedOutcome" ADD CHECK (("outcome" = 'linked') = ("momentId" IS NOT NULL));

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "FilmedAttempt" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "FilmedOutcome" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

GRANT SELECT, INSERT ON "FilmedAttempt", "FilmedOutcome" TO app_user;
ALTER TABLE "FilmedAttempt" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "FilmedOutcome" ENABLE ROW LEVEL SECURITY;

-- What waits is the club's own affair; what was linked belongs to the record, which the programme reads too.
CREATE POLICY seen ON "FilmedAttempt" FOR SELECT TO app_user
  USING ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]) OR "coachId" = (SELECT app_account()));
CREATE POLICY written ON "FilmedAttempt" FOR INSERT TO app_user WITH CHECK (
  "coachId" = (SELECT app_account()) AND "diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]) AND EXISTS (
    SELECT FROM "Attempt" a WHERE a."clubId" = "FilmedAttempt"."clubId" AND a."id" = "FilmedAttempt"."attemptId"
      AND a."diverId" = "FilmedAttempt"."diverId" AND a."coachId" = "FilmedAttempt"."coachId"));
CREATE POLICY seen ON "FilmedOutcome" FOR SELECT TO app_user USING (
  "diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR "coachId" = (SELECT app_account()) OR "by" = (SELECT app_account()));
-- By the coach who marked it, or the head coach of the diver's club; a link is a moment of that coach's view of that attempt.
CREATE POLICY written ON "FilmedOutcome" FOR INSERT TO app_user WITH CHECK (
  "by" = (SELECT app_account()) AND "diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[])
  AND ("coachId" = (SELECT app_account()) OR "diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]))
  AND EXISTS (
    SELECT FROM "FilmedAttempt" f WHERE f."clubId" = "FilmedOutcome"."clubId" AND f."attemptId" = "FilmedOutcome"."attemptId"
      AND f."diverId" = "FilmedOutcome"."diverId" AND f."coachId" = "FilmedOutcome"."coachId")
  AND ("outcome" = 'dropped' OR EXISTS (
    SELECT FROM "Moment" m JOIN "Observation" o ON o."id" = m."observationId"
    WHERE m."id" = "momentId" AND m."diverId" = "FilmedOutcome"."diverId" AND o."attemptId" = "FilmedOutcome"."attemptId"
      AND o."coachId" = "FilmedOutcome"."coachId")));

-- Without a consent to video nothing is marked as filmed and nothing is linked, whatever a later policy admits.
CREATE POLICY kept_by_consent ON "FilmedAttempt" AS RESTRICTIVE FOR INSERT TO app_user WITH CHECK (video_consented("diverId"));
CREATE POLICY kept_by_consent ON "FilmedOutcome" AS RESTRICTIVE FOR INSERT TO app_user
  WITH CHECK ("outcome" = 'dropped' OR video_consented("diverId"));
