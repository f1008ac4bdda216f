#!/bin/sh
# Backs up the container's SQLite into FOLDER, fourteen days kept; the older ones stay where the new one fails.
# In a crontab: 30 12 * * * /opt/pierhand/deploy/backup-container.sh /var/backups/pierhand
set -eu
umask 077
folder=${1:?Say where to: backup-container.sh FOLDER}
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
cd "$(dirname "$0")"
file=$folder/pierhand-$(date +%F).backup
docker compose exec -T pierhand node dist/bot/backup.js --replace /data/backup.sqlite
docker compose cp pierhand:/data/backup.sqlite "$file.part"
mv "$file.part" "$file"
docker compose exec -T pierhand rm /data/backup.sqlite
find "$folder" -name 'pierhand-*.backup' -mtime +14 -delete
