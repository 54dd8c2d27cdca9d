-- The secret signs what is sent, so it is kept as it is; the former one signs as well while receivers change over.
CREATE TABLE webhook (
  tenant VARCHAR(64) NOT NULL,
  id VARCHAR(36) NOT NULL,
  url VARCHAR(4000) NOT NULL,
  events VARCHAR(400) NOT NULL,
  secret VARCHAR(100) NOT NULL,
  former_secret VARCHAR(100),
  former_until TIMESTAMP WITH TIME ZONE,
  made_at TIMESTAMP WITH TIME ZONE NOT NULL,
  rests_until TIMESTAMP WITH TIME ZONE,
  PRIMARY KEY (tenant, id)
);

CREATE TABLE webhook_delivery (
  tenant VARCHAR(64) NOT NULL,
  id VARCHAR(40) NOT NULL,
  webhook VARCHAR(36) NOT NULL,
  event VARCHAR(40) NOT NULL,
  payload VARCHAR(20000) NOT NULL,
  state VARCHAR(12) NOT NULL,
  turn INTEGER NOT NULL,
  attempts INTEGER NOT NULL,
  made_at TIMESTAMP WITH TIME ZONE NOT NULL,
  tried_at TIMESTAMP WITH TIME ZONE,
  next_at TIMESTAMP WITH TIME ZONE,
  outcome VARCHAR(400),
  PRIMARY KEY (tenant, id),
  FOREIGN KEY (tenant, webhook) REFERENCES webhook (tenant, id) ON DELETE CASCADE
);

CREATE INDEX webhook_delivery_by_time ON webhook_delivery (tenant, webhook, made_at, id);
