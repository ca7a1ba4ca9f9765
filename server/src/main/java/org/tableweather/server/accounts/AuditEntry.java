package org.tableweather.server.accounts;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** One write: who, when, what. Never changed. */
@Entity
@Table(name = "audit_entry")
class AuditEntry extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private Long id;

    private Instant at;

    @Column(name = "account_id")
    private Long accountId;

    @Column(name = "token_id")
    private Long tokenId;

    private String action;
    private String subject;
    private String detail;

    AuditEntry() {}

    AuditEntry(Instant at, Long accountId, Long tokenId, String action, String subject, String detail) {
        this.at = at;
        this.accountId = accountId;
        this.tokenId = tokenId;
        this.action = action;
        this.subject = subject;
        this.detail = detail;
    }

    AuditView view() {
        return new AuditView(id, at, accountId, tokenId, action, subject, detail);
    }
}
