-- The table of db-scheduler, named and shaped as it asks for.
CREATE TABLE scheduled_tasks (
  task_name VARCHAR(100) NOT NULL,
  task_instance VARCHAR(250) NOT NULL,
  task_data ${bytes},
  execution_time TIMESTAMP WITH TIME ZONE NOT NULL,
  picked BOOLEAN NOT NULL,
  picked_by VARCHAR(200),
  last_success TIMESTAMP WITH TIME ZONE,
  last_failure TIMESTAMP WITH TIME ZONE,
  consecutive_failures INTEGER,
  last_heartbeat TIMESTAMP WITH TIME ZONE,
  version BIGINT NOT NULL,
  priority SMALLINT,
  PRIMARY KEY (task_name, task_instance)
);

CREATE INDEX scheduled_tasks_by_priority ON scheduled_tasks (priority DESC, execution_time);
CREATE INDEX scheduled_tasks_by_time ON scheduled_tasks (execution_time);
CREATE INDEX scheduled_tasks_by_heartbeat ON scheduled_tasks (last_heartbeat);

CREATE TABLE order_batch (
  tenant VARCHAR(64) NOT NULL,
  id VARCHAR(36) NOT NULL,
  state VARCHAR(12) NOT NULL,
  line_count INTEGER NOT NULL,
  made_at TIMESTAMP WITH TIME ZONE NOT NULL,
  made_by VARCHAR(200) NOT NULL,
  ended_at TIMESTAMP WITH TIME ZONE,
  idempotency_key VARCHAR(255),
  request_sha256 VARCHAR(64),
  PRIMARY KEY (tenant, id),
  UNIQUE (tenant, idempotency_key)
);

CREATE INDEX order_batch_by_time ON order_batch (tenant, made_at, id);

-- Lines that are worked off by one hand, so that no two hands write the same count.
CREATE TABLE order_batch_part (
  tenant VARCHAR(64) NOT NULL,
  batch VARCHAR(36) NOT NULL,
  part INTEGER NOT NULL,
  line_count INTEGER NOT NULL,
  answered INTEGER NOT NULL,
  refused INTEGER NOT NULL,
  PRIMARY KEY (tenant, batch, part),
  FOREIGN KEY (tenant, batch) REFERENCES order_batch (tenant, id) ON DELETE CASCADE
);

-- A line holds measurements: once it is answered, or not to be answered any more, it is null.
CREATE TABLE order_batch_line (
  tenant VARCHAR(64) NOT NULL,
  batch VARCHAR(36) NOT NULL,
  line INTEGER NOT NULL,
  part INTEGER NOT NULL,
  body ${line},
  answer VARCHAR(600000),
  PRIMARY KEY (tenant, batch, line),
  FOREIGN KEY (tenant, batch, part) REFERENCES order_batch_part (tenant, batch, part) ON DELETE CASCADE
);

CREATE INDEX order_batch_line_by_part ON order_batch_line (tenant, batch, part, line);
