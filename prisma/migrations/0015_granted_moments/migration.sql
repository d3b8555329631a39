-- A granted attempt opens the films that its coaches' views in force show, and those that were linked beside a view (decision 23):
-- one that a correction took out is no longer another club's to see.
CREATE FUNCTION app_granted_moments() RETURNS TABLE ("attemptId" uuid, "momentId" uuid) LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT o."attemptId", m."id" FROM "Moment" m JOIN "Observation" o ON o."id" = m."observationId"
  WHERE o."attemptId" = ANY (app_granted_attempt_ids())
    AND (EXISTS (SELECT FROM "FilmedOutcome" f WHERE f."momentId" = m."id")
      OR NOT EXISTS (SELECT FROM "Observation" c WHERE c."attemptId" = o."attemptId" AND c."supersedesId" = o."id"));
END;

-- Who may call these two stays as it was.
CREATE OR REPLACE FUNCTION app_granted_moment_ids() RETURNS uuid[] LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT coalesce(array_agg(g."momentId"), '{}') FROM app_granted_moments() g;
END;

CREATE OR REPLACE FUNCTION granted_looks() RETURNS TABLE ("attemptId" uuid, "givenName" text, "momentId" uuid) LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
BEGIN ATOMIC
  SELECT g."attemptId", coalesce(w."givenName", 'Name erased'), m."momentId" FROM app_granted_attempts() g
  LEFT JOIN "DiverWords" w ON w."diverId" = g."diverId"
  LEFT JOIN app_granted_moments() m ON m."attemptId" = g."attemptId";
END;

REVOKE EXECUTE ON FUNCTION app_granted_moments FROM PUBLIC;
GRANT EXECUTE ON FUNCTION app_granted_moments TO app_user;
