-- A call that was closed before all its numbers were dived: why, and by whom. It deletes nothing.
CREATE TABLE "CallClosure" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "callId" UUID NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "reasonId" UUID NOT NULL,

    CONSTRAINT "CallClosure_pkey" PRIMARY KEY ("id")
);
CREATE UNIQUE INDEX "CallClosure_callId_key" ON "CallClosure"("callId");
CREATE INDEX "CallClosure_diverId_idx" ON "CallClosure"("diverId");
ALTER TABLE "CallClosure" ADD FOREIGN KEY ("clubId", "callId") REFERENCES "Call"("clubId", "id");
ALTER TABLE "CallClosure" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");

CREATE TRIGGER append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON "CallClosure" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

GRANT SELECT, INSERT ON "CallClosure" TO app_user;
ALTER TABLE "CallClosure" ENABLE ROW LEVEL SECURITY;
CREATE POLICY seen ON "CallClosure" FOR SELECT TO app_user
  USING ("diverId" = ANY ((SELECT app_diver_ids())::uuid[]) OR "by" = (SELECT app_account()));
CREATE POLICY written ON "CallClosure" FOR INSERT TO app_user
  WITH CHECK ("diverId" = ANY ((SELECT app_coach_diver_ids())::uuid[]) AND "by" = (SELECT app_account()));
