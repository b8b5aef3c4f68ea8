// A database server of a row's own, that listens on a socket in its folder.
import { until } from "./run.js";

/** Starts one with a database `log` and somebody of that name; resolves to the socket. */
export async function startDatabase(t) {
  await t.run("mariadb-install-db", [
    ...["--no-defaults", `--datadir=${t.folder("data")}`, "--user=root", "--auth-root-authentication-method=normal"],
    ...["--skip-test-db", "--skip-name-resolve"],
  ]);
  t.write(
    "start.sql",
    "CREATE DATABASE log CHARACTER SET utf8mb4;\nCREATE USER log@localhost IDENTIFIED BY 'log';\nGRANT ALL ON log.* TO log@localhost;\n",
  );
  const socket = t.folder("db.sock");
  const server = t.start("mariadbd", [
    ...["--no-defaults", `--datadir=${t.folder("data")}`, `--socket=${socket}`, "--skip-networking", "--user=root"],
    ...[`--init-file=${t.folder("start.sql")}`, `--pid-file=${t.folder("db.pid")}`, "--innodb-buffer-pool-size=64M"],
  ]);
  await until(
    () => /ready for connections/.test(server.said()),
    () => `the database: ${server.said()}`,
    60_000,
  );
  return socket;
}
