-- Readiness rows carry what lists and the region show, so that a page of many divers evaluates nobody. They are
-- rebuildable: those that are there go, and are worked out again when they are next read.
DELETE FROM "Readiness";
ALTER TABLE "Readiness"
  ADD COLUMN "standing" TEXT NOT NULL,
  ADD COLUMN "attemptsLeft" INTEGER,
  ADD COLUMN "leftExact" BOOLEAN NOT NULL,
  ADD COLUMN "waitsFor" TEXT[];
ALTER TABLE "Readiness" ADD CHECK ("standing" IN ('ready', 'near', 'held up', 'on the way', 'stood down', 'held'));

-- Whoever sees a diver may work her rows out again, a reviewer too, and must hold her row meanwhile: a reader's older
-- answer may not replace what a coach has just written. A row lock in a policy's eyes is an update, so it is taken here.
CREATE FUNCTION lock_divers(divers uuid[]) RETURNS void LANGUAGE plpgsql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  PERFORM FROM "Diver" d WHERE d."id" = ANY (divers) AND d."id" = ANY (app_diver_ids()) ORDER BY d."id" FOR UPDATE;
END $$;
REVOKE EXECUTE ON FUNCTION lock_divers FROM PUBLIC;
GRANT EXECUTE ON FUNCTION lock_divers TO app_user;
