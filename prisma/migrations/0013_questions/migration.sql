-- What head coaches made of the moments that a step rests on, what the coaches answered, and what a decision said of what was
-- asked. None of it changes a rating, and no rule of evidence reads it.

-- One row each time: accepted, questioned (in words), a question taken back, or a film that did not open.
CREATE TABLE "MomentCheck" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "momentId" UUID NOT NULL,
    "observationId" UUID NOT NULL,
    "attemptId" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "wordsId" UUID,

    CONSTRAINT "MomentCheck_pkey" PRIMARY KEY ("id"),
    CHECK ("kind" IN ('accepted', 'questioned', 'withdrawn', 'not reachable')),
    CHECK (("kind" = 'questioned') = ("wordsId" IS NOT NULL))
);
CREATE INDEX "MomentCheck_diverId_idx" ON "MomentCheck"("diverId");
CREATE INDEX "MomentCheck_momentId_idx" ON "MomentCheck"("momentId");
ALTER TABLE "MomentCheck" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "MomentCheck" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "MomentCheck" ADD FOREIGN KEY ("momentId") REFERENCES "Moment"("id");

CREATE TABLE "QuestionAnswer" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "questionId" UUID NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "wordsId" UUID NOT NULL,

    CONSTRAINT "QuestionAnswer_pkey" PRIMARY KEY ("id")
);
CREATE INDEX "QuestionAnswer_diverId_idx" ON "QuestionAnswer"("diverId");
ALTER TABLE "QuestionAnswer" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "QuestionAnswer" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "QuestionAnswer" ADD FOREIGN KEY ("questionId") REFERENCES "MomentCheck"("id");

-- What a decision said of a question that stood at it.
CREATE TABLE "DecisionQuestion" (
    "decisionId" UUID NOT NULL,
    "questionId" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "how" TEXT NOT NULL,
    "by" UUID NOT NULL,
    "reasonId" UUID,

    CONSTRAINT "DecisionQuestion_pkey" PRIMARY KEY ("decisionId", "questionId"),
    CHECK ("how" IN ('answered', 'settled', 'left open')),
    CHECK (("how" = 'left open') = ("reasonId" IS NOT NULL))
);
CREATE INDEX "DecisionQuestion_diverId_idx" ON "DecisionQuestion"("diverId");
CREATE INDEX "DecisionQuestion_questionId_idx" ON "DecisionQuestion"("questionId");
ALTER TABLE "DecisionQuestion" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "DecisionQuestion" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "DecisionQuestion" ADD FOREIGN KEY ("decisionId") REFERENCES "Decision"("id");
ALTER TABLE "DecisionQuestion" ADD FOREIGN KEY ("questionId") REFERENCES "MomentCheck"("id");

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "MomentCheck" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "QuestionAnswer" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "DecisionQuestion" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- ── Who sees and writes them ──
GRANT SELECT, INSERT ON "MomentCheck", "QuestionAnswer", "DecisionQuestion" TO app_user;
ALTER TABLE "MomentCheck" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "QuestionAnswer" ENABLE ROW LEVEL SECURITY;
ALTER TABLE "DecisionQuestion" ENABLE ROW LEVEL SECURITY;

-- They follow the diver, as her record does; who wrote one keeps sight of it, and of nothing that came after.
CREATE POLICY seen ON "MomentCheck" FOR SELECT TO app_user
  USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR "by" = (SELECT app_account()));
CREATE POLICY seen ON "QuestionAnswer" FOR SELECT TO app_user
  USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR "by" = (SELECT app_account()));
CREATE POLICY seen ON "DecisionQuestion" FOR SELECT TO app_user
  USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR "by" = (SELECT app_account()));

-- A head coach of the diver, on a moment that she sees, which takes the consent to video. To take a question back needs no film.
CREATE POLICY written ON "MomentCheck" FOR INSERT TO app_user WITH CHECK (
  "diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]) AND "by" = (SELECT app_account())
  AND EXISTS (SELECT FROM "Observation" o WHERE o."id" = "observationId" AND o."attemptId" = "MomentCheck"."attemptId"
    AND o."diverId" = "MomentCheck"."diverId")
  AND ("kind" = 'withdrawn' OR EXISTS (SELECT FROM "Moment" m WHERE m."id" = "momentId"
    AND m."observationId" = "MomentCheck"."observationId" AND m."diverId" = "MomentCheck"."diverId")));

-- The coach who rated what was asked about, while the diver is of her club.
CREATE POLICY written ON "QuestionAnswer" FOR INSERT TO app_user WITH CHECK (
  "diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]) AND "by" = (SELECT app_account())
  AND EXISTS (SELECT FROM "MomentCheck" c JOIN "Observation" o ON o."id" = c."observationId"
    WHERE c."id" = "questionId" AND c."kind" = 'questioned' AND c."diverId" = "QuestionAnswer"."diverId"
      AND o."coachId" = (SELECT app_account())));

-- Whoever decided says it, with her own decision on that diver.
CREATE POLICY written ON "DecisionQuestion" FOR INSERT TO app_user WITH CHECK (
  "diverId" = ANY ((SELECT app_head_diver_ids())::uuid[]) AND "by" = (SELECT app_account())
  AND EXISTS (SELECT FROM "Decision" d WHERE d."id" = "decisionId" AND d."by" = (SELECT app_account())
    AND d."diverId" = "DecisionQuestion"."diverId")
  AND EXISTS (SELECT FROM "MomentCheck" c WHERE c."id" = "questionId" AND c."kind" = 'questioned'
    AND c."diverId" = "DecisionQuestion"."diverId"));
