
-- CreateTable
CREATE TABLE "Programme" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "clockOffsetMs" BIGINT NOT NULL DEFAULT 0,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Programme_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Club" (
    "id" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Club_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "VenueFlag" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "feature" TEXT NOT NULL,
    "has" BOOLEAN NOT NULL,
    "recordedAt" TIMESTAMPTZ(3) NOT NULL,
    "recordedBy" UUID NOT NULL,

    CONSTRAINT "VenueFlag_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Account" (
    "id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "initials" TEXT NOT NULL,
    "passwordHash" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "disabledAt" TIMESTAMPTZ(3),

    CONSTRAINT "Account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Session" (
    "id" UUID NOT NULL,
    "accountId" UUID NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,
    "endedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Membership" (
    "id" UUID NOT NULL,
    "accountId" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "clubId" UUID,
    "role" TEXT NOT NULL,
    "from" TIMESTAMPTZ(3) NOT NULL,
    "to" TIMESTAMPTZ(3),

    CONSTRAINT "Membership_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CoachScope" (
    "id" UUID NOT NULL,
    "accountId" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "families" TEXT[],
    "places" TEXT[],
    "until" TIMESTAMPTZ(3),
    "setBy" UUID NOT NULL,
    "setAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "CoachScope_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Diver" (
    "id" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "twistingSide" TEXT,
    "hurdleLeg" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Diver_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "DiverWords" (
    "diverId" UUID NOT NULL,
    "givenName" TEXT,
    "familyName" TEXT,
    "bornOn" DATE,
    "erasedAt" TIMESTAMPTZ(3),

    CONSTRAINT "DiverWords_pkey" PRIMARY KEY ("diverId")
);

-- CreateTable
CREATE TABLE "DiverMembership" (
    "id" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "from" TIMESTAMPTZ(3) NOT NULL,
    "to" TIMESTAMPTZ(3),

    CONSTRAINT "DiverMembership_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Squad" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Squad_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SquadDiver" (
    "squadId" UUID NOT NULL,
    "diverId" UUID NOT NULL,

    CONSTRAINT "SquadDiver_pkey" PRIMARY KEY ("squadId","diverId")
);

-- CreateTable
CREATE TABLE "Edition" (
    "id" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "publishedAt" TIMESTAMPTZ(3) NOT NULL,
    "publishedBy" UUID NOT NULL,

    CONSTRAINT "Edition_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Draft" (
    "id" UUID NOT NULL,
    "programmeId" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "createdBy" UUID NOT NULL,

    CONSTRAINT "Draft_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Call" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "skill" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "atLevel" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "calledAt" TIMESTAMPTZ(3) NOT NULL,
    "receivedAt" TIMESTAMPTZ(3) NOT NULL,
    "coachId" UUID NOT NULL,
    "deviceId" UUID NOT NULL,
    "offsetMs" BIGINT NOT NULL,
    "contentDigest" TEXT NOT NULL,

    CONSTRAINT "Call_pkey" PRIMARY KEY ("clubId","id")
) PARTITION BY RANGE ("id");
CREATE TABLE "Call_default" PARTITION OF "Call" DEFAULT;

-- CreateTable
CREATE TABLE "Attempt" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "skill" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "atLevel" TEXT NOT NULL,
    "callId" UUID,
    "callNumber" INTEGER,
    "called" BOOLEAN NOT NULL,
    "attemptedAt" TIMESTAMPTZ(3) NOT NULL,
    "offsetMs" BIGINT NOT NULL,
    "receivedAt" TIMESTAMPTZ(3) NOT NULL,
    "coachId" UUID NOT NULL,
    "deviceId" UUID NOT NULL,
    "setting" TEXT NOT NULL,
    "cued" BOOLEAN NOT NULL,
    "closedThen" BOOLEAN NOT NULL,
    "flags" TEXT[],
    "contentDigest" TEXT NOT NULL,

    CONSTRAINT "Attempt_pkey" PRIMARY KEY ("clubId","id")
) PARTITION BY RANGE ("id");
CREATE TABLE "Attempt_default" PARTITION OF "Attempt" DEFAULT;

-- CreateTable
CREATE TABLE "Observation" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "attemptId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "coachId" UUID NOT NULL,
    "editionHash" TEXT NOT NULL,
    "observedOn" TEXT NOT NULL,
    "observedAt" TIMESTAMPTZ(3) NOT NULL,
    "receivedAt" TIMESTAMPTZ(3) NOT NULL,
    "ratings" JSONB NOT NULL,
    "imputed" JSONB NOT NULL,
    "restAsExpected" BOOLEAN NOT NULL,
    "faults" TEXT[],
    "withinScope" BOOLEAN NOT NULL,
    "momentCount" INTEGER NOT NULL,
    "noteId" UUID,
    "supersedesId" UUID,
    "reasonId" UUID,
    "digest" TEXT NOT NULL,
    "contentDigest" TEXT NOT NULL,

    CONSTRAINT "Observation_pkey" PRIMARY KEY ("clubId","id")
) PARTITION BY RANGE ("id");
CREATE TABLE "Observation_default" PARTITION OF "Observation" DEFAULT;

-- CreateTable
CREATE TABLE "ObservationHead" (
    "clubId" UUID NOT NULL,
    "attemptId" UUID NOT NULL,
    "coachId" UUID NOT NULL,
    "observationId" UUID NOT NULL,

    CONSTRAINT "ObservationHead_pkey" PRIMARY KEY ("clubId","attemptId","coachId")
);

-- CreateTable
CREATE TABLE "Words" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "writtenBy" UUID NOT NULL,
    "text" TEXT,
    "salt" TEXT,
    "commitment" TEXT NOT NULL,
    "erasedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Words_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Moment" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "observationId" UUID NOT NULL,
    "link" TEXT,
    "startMs" INTEGER NOT NULL,
    "endMs" INTEGER,
    "salt" TEXT,
    "commitment" TEXT NOT NULL,
    "erasedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Moment_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SignOff" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "skill" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "level" TEXT NOT NULL,
    "editionHash" TEXT NOT NULL,
    "coachId" UUID NOT NULL,
    "signedAt" TIMESTAMPTZ(3) NOT NULL,
    "method" TEXT NOT NULL,
    "waiver" JSONB,
    "reasonId" UUID,
    "evidence" UUID[],
    "ledgerSeq" BIGINT NOT NULL,

    CONSTRAINT "SignOff_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Revocation" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "subjectId" UUID NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "reasonId" UUID NOT NULL,
    "ledgerSeq" BIGINT NOT NULL,

    CONSTRAINT "Revocation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Recognition" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "skill" TEXT,
    "place" TEXT,
    "level" TEXT,
    "family" TEXT,
    "by" UUID NOT NULL,
    "recognisedAt" TIMESTAMPTZ(3) NOT NULL,
    "reasonId" UUID NOT NULL,
    "ledgerSeq" BIGINT NOT NULL,

    CONSTRAINT "Recognition_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Decision" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "target" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "by" UUID NOT NULL,
    "decidedAt" TIMESTAMPTZ(3) NOT NULL,
    "editionHash" TEXT NOT NULL,
    "findingDigest" TEXT NOT NULL,
    "waivesAge" BOOLEAN NOT NULL DEFAULT false,
    "wantsMoreOf" TEXT[],
    "diverWants" TEXT,
    "reasonId" UUID,
    "onlyCoachId" UUID,
    "ledgerSeq" BIGINT NOT NULL,

    CONSTRAINT "Decision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Incident" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "attemptId" UUID,
    "skill" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "by" UUID NOT NULL,
    "happenedAt" TIMESTAMPTZ(3) NOT NULL,
    "receivedAt" TIMESTAMPTZ(3) NOT NULL,
    "noteId" UUID,
    "ledgerSeq" BIGINT NOT NULL,

    CONSTRAINT "Incident_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Release" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "subjectId" UUID NOT NULL,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "reasonId" UUID NOT NULL,
    "ledgerSeq" BIGINT,

    CONSTRAINT "Release_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "StandDown" (
    "id" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "diverId" UUID NOT NULL,
    "closes" TEXT NOT NULL,
    "from" DATE NOT NULL,
    "until" DATE,
    "by" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "reasonId" UUID,
    "ledgerSeq" BIGINT NOT NULL,

    CONSTRAINT "StandDown_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Ledger" (
    "programmeId" UUID NOT NULL,
    "seq" BIGINT NOT NULL,
    "kind" TEXT NOT NULL,
    "schemaVersion" INTEGER NOT NULL,
    "payload" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Ledger_pkey" PRIMARY KEY ("programmeId","seq")
);

-- CreateTable
CREATE TABLE "LedgerHead" (
    "programmeId" UUID NOT NULL,
    "seq" BIGINT NOT NULL,

    CONSTRAINT "LedgerHead_pkey" PRIMARY KEY ("programmeId")
);

-- CreateTable
CREATE TABLE "Readiness" (
    "diverId" UUID NOT NULL,
    "target" TEXT NOT NULL,
    "programmeId" UUID NOT NULL,
    "clubId" UUID NOT NULL,
    "status" TEXT NOT NULL,
    "held" TEXT NOT NULL,
    "ready" BOOLEAN NOT NULL,
    "readySince" DATE,
    "validUntil" DATE,
    "editionHash" TEXT NOT NULL,
    "computedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Readiness_pkey" PRIMARY KEY ("diverId","target")
);

-- CreateTable
CREATE TABLE "SignInRate" (
    "key" TEXT NOT NULL,
    "points" INTEGER NOT NULL DEFAULT 0,
    "expire" BIGINT,

    CONSTRAINT "SignInRate_pkey" PRIMARY KEY ("key")
);

-- CreateIndex
CREATE INDEX "Club_programmeId_idx" ON "Club"("programmeId");

-- CreateIndex
CREATE INDEX "VenueFlag_clubId_feature_idx" ON "VenueFlag"("clubId", "feature");

-- CreateIndex
CREATE UNIQUE INDEX "Account_email_key" ON "Account"("email");

-- CreateIndex
CREATE INDEX "Session_accountId_idx" ON "Session"("accountId");

-- CreateIndex
CREATE INDEX "Membership_accountId_idx" ON "Membership"("accountId");

-- CreateIndex
CREATE INDEX "Membership_clubId_idx" ON "Membership"("clubId");

-- CreateIndex
CREATE INDEX "CoachScope_accountId_clubId_idx" ON "CoachScope"("accountId", "clubId");

-- CreateIndex
CREATE INDEX "Diver_programmeId_idx" ON "Diver"("programmeId");

-- CreateIndex
CREATE INDEX "DiverMembership_diverId_idx" ON "DiverMembership"("diverId");

-- CreateIndex
CREATE INDEX "DiverMembership_clubId_idx" ON "DiverMembership"("clubId");

-- CreateIndex
CREATE INDEX "Squad_clubId_idx" ON "Squad"("clubId");

-- CreateIndex
CREATE INDEX "SquadDiver_diverId_idx" ON "SquadDiver"("diverId");

-- CreateIndex
CREATE UNIQUE INDEX "Edition_programmeId_number_key" ON "Edition"("programmeId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Edition_programmeId_hash_key" ON "Edition"("programmeId", "hash");

-- CreateIndex
CREATE INDEX "Draft_programmeId_idx" ON "Draft"("programmeId");

-- CreateIndex
CREATE INDEX "Call_diverId_calledAt_idx" ON "Call"("diverId", "calledAt");

-- CreateIndex
CREATE INDEX "Attempt_diverId_attemptedAt_idx" ON "Attempt"("diverId", "attemptedAt");

-- CreateIndex
CREATE INDEX "Attempt_clubId_callId_callNumber_idx" ON "Attempt"("clubId", "callId", "callNumber");

-- CreateIndex
CREATE INDEX "Observation_clubId_attemptId_idx" ON "Observation"("clubId", "attemptId");

-- CreateIndex
CREATE INDEX "Observation_diverId_idx" ON "Observation"("diverId");

-- CreateIndex
CREATE INDEX "Words_diverId_idx" ON "Words"("diverId");

-- CreateIndex
CREATE INDEX "Moment_diverId_idx" ON "Moment"("diverId");

-- CreateIndex
CREATE INDEX "Moment_observationId_idx" ON "Moment"("observationId");

-- CreateIndex
CREATE INDEX "SignOff_diverId_idx" ON "SignOff"("diverId");

-- CreateIndex
CREATE UNIQUE INDEX "Revocation_subjectId_key" ON "Revocation"("subjectId");

-- CreateIndex
CREATE INDEX "Revocation_diverId_idx" ON "Revocation"("diverId");

-- CreateIndex
CREATE INDEX "Recognition_diverId_idx" ON "Recognition"("diverId");

-- CreateIndex
CREATE INDEX "Decision_diverId_target_idx" ON "Decision"("diverId", "target");

-- CreateIndex
CREATE INDEX "Incident_diverId_idx" ON "Incident"("diverId");

-- CreateIndex
CREATE INDEX "Release_diverId_idx" ON "Release"("diverId");

-- CreateIndex
CREATE UNIQUE INDEX "Release_kind_subjectId_key" ON "Release"("kind", "subjectId");

-- CreateIndex
CREATE INDEX "StandDown_diverId_idx" ON "StandDown"("diverId");

-- CreateIndex
CREATE INDEX "Readiness_clubId_target_idx" ON "Readiness"("clubId", "target");

-- References that must hold. About a diver or a club; the partitioned tables are referred to by their whole key.
ALTER TABLE "Club" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "VenueFlag" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "Session" ADD FOREIGN KEY ("accountId") REFERENCES "Account"("id");
ALTER TABLE "Membership" ADD FOREIGN KEY ("accountId") REFERENCES "Account"("id");
ALTER TABLE "Membership" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "Membership" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "Membership" ADD CHECK ("role" IN ('assistant', 'head') = ("clubId" IS NOT NULL));
ALTER TABLE "Membership" ADD CHECK ("role" IN ('assistant', 'head', 'reviewer', 'lead'));
ALTER TABLE "CoachScope" ADD FOREIGN KEY ("accountId") REFERENCES "Account"("id");
ALTER TABLE "CoachScope" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "Diver" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "DiverWords" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "DiverMembership" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "DiverMembership" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
-- A diver belongs to one club at a time.
CREATE UNIQUE INDEX "DiverMembership_one_open" ON "DiverMembership"("diverId") WHERE "to" IS NULL;
ALTER TABLE "Squad" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "SquadDiver" ADD FOREIGN KEY ("squadId") REFERENCES "Squad"("id") ON DELETE CASCADE;
ALTER TABLE "SquadDiver" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Edition" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "Edition" ADD CHECK ("hash" = encode(sha256(convert_to("document", 'UTF8')), 'hex'));
ALTER TABLE "Draft" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "Call" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "Call" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Attempt" ADD FOREIGN KEY ("clubId") REFERENCES "Club"("id");
ALTER TABLE "Attempt" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Attempt" ADD FOREIGN KEY ("clubId", "callId") REFERENCES "Call"("clubId", "id");
ALTER TABLE "Observation" ADD FOREIGN KEY ("clubId", "attemptId") REFERENCES "Attempt"("clubId", "id");
ALTER TABLE "Words" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Moment" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Moment" ADD CHECK ("startMs" >= 0 AND ("endMs" IS NULL OR "endMs" > "startMs"));
ALTER TABLE "SignOff" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Revocation" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Recognition" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Decision" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Decision" ADD CHECK ("outcome" IN ('approve', 'override', 'return', 'withdraw'));
ALTER TABLE "Incident" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "Release" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "StandDown" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
ALTER TABLE "StandDown" ADD CHECK ("closes" IN ('water', 'boards', 'new'));
ALTER TABLE "Ledger" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "Ledger" ADD CHECK ("hash" = encode(sha256(convert_to("payload", 'UTF8')), 'hex'));
ALTER TABLE "LedgerHead" ADD FOREIGN KEY ("programmeId") REFERENCES "Programme"("id");
ALTER TABLE "Readiness" ADD FOREIGN KEY ("diverId") REFERENCES "Diver"("id");
